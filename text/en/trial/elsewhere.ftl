## elsewhere.rs

give-the-repeatability-as-a-cielab = Give the repeatability as a CIELAB difference from 0 to 10, such as { $usual_repeatability_de }.
these-colours-are-for-not-for-d65 = These colours are for { $view }, not for D65/10 like those from photos: they are compared among themselves only.
