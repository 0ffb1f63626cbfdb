## source.rs

is-no-source-of-readings-use-photo = "{ $value }" is no source of readings; use photo, spectrum or lab
photos = photos
spectra-from-elsewhere = spectra from elsewhere
lab-values-from-elsewhere = Lab values from elsewhere
