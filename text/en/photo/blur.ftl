## blur.rs

the-photo-is-blurred-the-edges = The photo is blurred: the edges of the chart's patches are { $edge } px wide. Hold the camera still and tap on the chart to focus; keep areas well inside the pieces.
