## outcome.rs

something-went-wrong-that-is-no-fault = something went wrong that is no fault of yours: { $error }
