"""The cautions that every overview carries, and the few that hang above the machine.

Sources: 16 CFR 1640 (USA), SI 1988/1324 as amended (United Kingdom), 49 CFR 571.302 (FMVSS 302);
tools and adhesives: common practice, and OSHA's sheet on methylene chloride for the latter.
"""

CAUTIONS = (
    """Prove the scale. Measure all three sides of the triangle, and both bars of every sheet,
    before anything is cut: half a millimetre in 100 is 2.5 mm on a seat of 500. Print again at
    actual size (100 %) if a side is off.""",
    """Blades, needles, staple guns. Cut away from the hand, guard the rotary blade, wear a glove
    that resists cuts; keep fingers off the needle and the power off to thread; wear eye
    protection to staple and to pull staples, and take the air line off to clear a gun.""",
    """Adhesives and solvents. Air the room well, keep flames and sparks away, and follow the
    safety sheet of what you use.""",
    """Fire. Upholstered seats that are sold, or used in public, must meet the local flammability
    code (such as 16 CFR 1640 in the USA, or SI 1988/1324 as amended in the United Kingdom).
    These sheets do not establish that.""",
    """Vehicles. Seats in vehicles fall under rules of their own (such as FMVSS 302). Never cut,
    cover or stitch over airbags, their seams, belts or sensors.""",
    "Local codes and licensed practice go before anything printed here.",
)

AT_THE_BENCH = (
    """Cut away from the hand, guard the blade, power off to thread, eyes covered to staple and to
    pull staples, air line off to clear the gun. Air the room for adhesives, no flames.""",
    """Seats sold or used in public must meet the local flammability code, seats in vehicles rules
    of their own; this card does not establish that. Local codes go first.""",
)
