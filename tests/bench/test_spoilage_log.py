"""The log of spoiled lenses: good rows kept, bad ones named, causes ranked by money. All invented."""

from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.bench.spoilage_log import COLUMNS, parse_log, read_log
from lablib.errors import LabError

HEAD = ",".join(COLUMNS)
GOOD = "2026-03-02,J-1,right,slip,blocking,final inspection,60,30,24,8"
LOG = f"""{HEAD}
{GOOD}
2026-03-03,J-2,left,scratch,cleaning,wearer,20,10,24,0
2026-03-03,J-3,left,Scratch,cleaning,final inspection,20,10,24,0
2026-03-09,J-4,right,scratch,deblocking,edge check,20,10,24,0
"""


def test_causes_are_ranked_by_money_and_not_by_count():
    log = parse_log(LOG)
    assert log.faults == ()
    assert [(cause.name, cause.count, cause.cost) for cause in log.causes()] == [
        ("slip", 1, pytest.approx(80.0)),
        ("scratch", 3, pytest.approx(72.0)),
    ]
    assert log.cost == pytest.approx(152.0)


def test_rows_are_counted_batch_by_batch():
    log = parse_log(LOG)
    assert log.counts([date(2026, 3, 2), date(2026, 3, 9), date(2026, 3, 16)]) == (3, 1, 0)


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (GOOD.replace("2026-03-02", "02.03.2026"), "date '02.03.2026' is no day: give it as 2026-03-27"),
        (GOOD.replace("right", "both"), "lens 'both' is neither right nor left"),
        (GOOD.replace("slip", ""), 'cause is empty: write what is known, or "unknown"'),
        (GOOD.replace("60", "sixty"), "lens_price 'sixty' is no number: give it as 12.50"),
        (GOOD.replace("60", "-60"), "lens_price -60 is below 0"),
        (GOOD.replace("60", "nan"), "lens_price nan"),
        (f"{GOOD},9", "more cells than columns: a comma inside a cell needs the cell in quotes"),
        ("2026-03-02,J-1", "cause is empty"),
    ],
)
def test_a_bad_row_is_named_and_the_good_rows_stay(row: str, said: str):
    log = parse_log(f"{LOG}{row}\n", name="march.csv")
    assert len(log.rows) == 4
    (fault,) = log.faults
    assert fault.startswith("march.csv, line 6: ")
    assert said in fault


def test_columns_may_stand_in_another_order_and_others_beside_them():
    columns = (*reversed(COLUMNS), "remark")
    cells = dict(zip(COLUMNS, GOOD.split(","), strict=True)) | {"remark": "seen twice"}
    log = parse_log(f"{','.join(columns)}\n{','.join(cells[column] for column in columns)}\n")
    assert log.rows == parse_log(f"{HEAD}\n{GOOD}\n").rows


def test_a_missing_column_is_named():
    with pytest.raises(LabError, match="log, line 1: no column cause, station"):
        parse_log(HEAD.replace(",cause,station", "") + "\n")


def test_a_file_is_read(tmp_path: Path):
    path = tmp_path / "log.csv"
    path.write_bytes(b"\xef\xbb\xbf" + LOG.replace("\n", "\r\n").encode())
    assert read_log(path) == parse_log(LOG)


def test_files_that_are_no_log_are_refused(tmp_path: Path):
    path = tmp_path / "log.csv"
    with pytest.raises(LabError, match=r"log log.csv cannot be read \(No such file"):
        read_log(path)
    path.write_bytes(b"date,job\n\xff\xfe\n")
    with pytest.raises(LabError, match=r"log log.csv, line 2: not UTF-8 text: save it as CSV in UTF-8"):
        read_log(path)
    path.write_bytes(b"x" * 5_000_001)
    with pytest.raises(LabError, match="over 5 MB"):
        read_log(path)
    path.write_bytes(b"")
    with pytest.raises(LabError, match="line 1: no column date"):
        read_log(path)


def test_an_open_quotation_mark_is_told_because_it_swallows_rows():
    log = parse_log(f'{LOG}"{GOOD}\n{GOOD}\n')
    assert len(log.rows) == 4
    (fault,) = log.faults
    assert fault == (
        "log, line 7: a cell runs over several lines: close its quotation mark, rows are lost in it"
    )


@pytest.mark.parametrize("before", ["", f"{HEAD}\n{GOOD}\n"])
def test_a_cell_too_long_to_be_read_is_refused(before: str):
    with pytest.raises(LabError, match=r"log, after line \d: field larger than .* mark that is not closed"):
        parse_log(f'{before}"{"x" * 200_000}')


@given(st.text(max_size=200))
def test_no_text_behind_good_rows_takes_them_away(text: str):
    assert parse_log(f"{LOG}{text}").rows[:4] == parse_log(LOG).rows
