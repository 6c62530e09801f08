from patternmaker.facts import both
from patternmaker.pattern.notes import Fine, Note, Share
from patternmaker.units import Unit


def test_note_tells_lengths_in_the_reader_s_unit_shares_in_per_cent_and_words_as_they_are():
    note = Note("{} is cut {} wide: {}", ("Top", 365.3, Share(0.02488)))
    assert note.told(Unit.IN) == "Top is cut 14 3/8 in wide: 2.49 %"
    assert note.told(Unit.MM) == "Top is cut 365.5 mm wide: 2.49 %"


def test_share_is_told_to_a_hundredth_of_a_per_cent():
    assert Note("{}", (Share(0.024351),)).told(Unit.MM) == "2.44 %"


def test_braces_in_a_word_are_left_alone():
    assert Note("{}", ("{red}",)).told(Unit.MM) == "{red}"


def test_length_finer_than_a_tape_is_told_finely():
    note = Note("smoothed by {}", (Fine(0.0254),))
    assert note.told(Unit.MM) == "smoothed by 0.03 mm"
    assert note.told(Unit.IN) == "smoothed by 0.001 in"


def test_rule_of_thumb_is_round_in_either_system():
    note = Note("a staple every {}", (both(in_=1, mm=25),))
    assert note.told(Unit.IN) == "a staple every 1 in"
    assert note.told(Unit.CM) == "a staple every 2.5 cm"
