"""The drawing of a room: plan, sections, ceiling plan, curves and findings, as HTML, SVG, PDF or DXF."""
