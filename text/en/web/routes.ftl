## routes.rs

there-is-no-page-at-this-address = There is no page at this address. Start again from the list of trials.
this-address-takes-no-such-request-start = This address takes no such request. Start again from the list of trials.
