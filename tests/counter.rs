//! What a job costs: worked by hand, and whatever happened.

#[path = "counter/anything.rs"]
mod anything;
#[path = "counter/audits.rs"]
mod audits;
#[path = "counter/by_hand.rs"]
mod by_hand;
#[path = "counter/jobs.rs"]
mod jobs;
#[path = "counter/places.rs"]
mod places;
#[path = "counter/shelf.rs"]
mod shelf;
