## correct/chart.rs

the-charts-light-patches-are-burnt-out = The chart's light patches are burnt out. Take the photo again with less exposure (-1), away from direct sun.
the-photo-is-so-dark = The photo is so dark that the chart's white patch is nearly black. Take it again with more light.
patch-of-the-chart = patch of the chart is
patches-of-the-chart = patches of the chart are
burnt-out-and-left-aside-expose = { $aside } { $patches } burnt out and left aside. Expose a little less (-0.7); light colours are then surer.

## correct/choose.rs

its-grey-patches-dont-get-darker = its grey patches don't get darker from white to black

## correct/mod.rs

tone-by-light = { $shares }; tone by { $neutrals }; light by the { $source }
the-neutrals = the neutrals
the-neutrals-a-veil-taken-off = the neutrals, a veil taken off
they-are-missed-by-ciede2000 = they are missed by { $median } (CIEDE2000)
the-chart-is-fitted-only-roughly = The chart is fitted only roughly ({ $median } CIEDE2000): colours are uncertain, differences in this photo less so. Daylight and a photo without filters fit better.
the-patches-dont-look-like-the-usual = The patches don't look like the usual 24-patch chart: { $how }. Check the corners, or give the chart's own values with --chart.

## correct/family.rs

matrix = matrix
root-polynomial-of-degree-2 = root polynomial of degree 2
