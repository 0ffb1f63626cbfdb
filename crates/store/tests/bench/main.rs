//! The bench as its users see it: folders, files and rows through the public interface.

mod desk;
mod handles;
mod marking;
mod photographs;
mod photos;
mod queue;
mod trials;
