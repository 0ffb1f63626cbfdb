## error.rs

the-wavelength-step-nm-is-not-above = the wavelength step { $step_nm } nm is not above zero; spectra usually go by 1, 5, 10 or 20 nm
a-spectrum-needs-at-least-6-values = a spectrum needs at least 6 values, this one has { $count }
the-spectrum-runs-from-to-nm = the spectrum runs from { $first_nm } to { $last_nm } nm; it has to cover 400 to 700 nm
the-value-at-nm-is-no-reflectance = the value { $value } at { $wavelength_nm } nm is no reflectance between 0 and 2 (write 0.45 for 45 %)
is-no-view-that-is-known-here = "{ $name }" is no view that is known here; use D65/10, D65/2, D50/2, A/10, FL2/10 or FL11/10
is-no-grade-of-a-grey-scale = "{ $text }" is no grade of a grey scale; write 5, 4-5, 4, 3-4, 3, 2-3, 2, 1-2 or 1
