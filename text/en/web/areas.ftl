## areas.rs

an-area-needs-three-corners-or-more = An area needs three corners or more, each as x,y with a space between two corners: 120,80 420,80 420,300.
an-area-may-have-200-corners = An area may have 200 corners at most; leave some out.
the-corner-lies-outside-the-photo = The corner { $x },{ $y } lies outside the photo, which is { $width } by { $height } pixels.
the-chart-has-four-corners = The chart has four corners, each as x,y with a space between two corners; { $found } came.
is-not-a-corner-write-x-y = “{ $part }” is not a corner: write x,y without a space inside, such as 120,80.
