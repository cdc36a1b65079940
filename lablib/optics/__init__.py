"""The lens on paper and in the hand: prescription, prism, material, frame, layout, surfaces, lens."""
