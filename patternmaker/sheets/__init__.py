"""Full-scale sheets: papers, tiling, joins, the overview, and the PDF that holds them."""
