//! One file for each thing a person can see or do, named noun/verb.

pub(crate) mod bin;
pub(crate) mod board;
pub(crate) mod chart;
pub(crate) mod demo;
pub(crate) mod elsewhere;
pub(crate) mod eyes;
pub(crate) mod journal;
pub(crate) mod material;
pub(crate) mod phone;
pub(crate) mod photo;
pub(crate) mod plan;
pub(crate) mod recipe;
pub(crate) mod report;
pub(crate) mod rinse;
pub(crate) mod run;
pub(crate) mod search;
pub(crate) mod settings;
pub(crate) mod setup;
pub(crate) mod studio;
pub(crate) mod trial;
