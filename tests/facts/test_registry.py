"""A class makes itself known by its decorator, from a file of its own."""

from patternmaker.facts import Measured, Registry, length


def test_known_classes_stand_in_alphabetical_order():
    registry = Registry[Measured]("patternmaker.facts")

    @registry.known_as("wedge")
    class Wedge(Measured):
        width: float = length("left to right")

    @registry.known_as("drum")
    class Drum(Measured):
        height: float = length("bottom to top")

    assert list(registry.all.items()) == [("drum", Drum), ("wedge", Wedge)]
    assert registry.all["drum"].called == "drum"
    assert Drum(height=3.0).height == 3.0  # type: ignore[call-arg]
