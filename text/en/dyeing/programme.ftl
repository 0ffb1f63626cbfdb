## programme.rs

the-bath-stays-at-instead = The bath stays at { $kept } instead of the usual { $usual }, for { $above }.
