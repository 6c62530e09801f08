"""Full-scale, sew-ready upholstery patterns from a few tape measurements."""

__version__ = "0.1.0"
