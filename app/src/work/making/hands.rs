//! The hands move on, or back.

use std::sync::Arc;

use plumpline_core::making::{Progress, ReturnPlace, WorkedPiece};

use super::{Handiwork, Make, PieceCopy};
use crate::document::Document;

impl Handiwork {
    /// Writes a note on a round of the copy under the hook, or removes it.
    pub(crate) fn note(&mut self, document: &mut Document, round: u32, text: &str) {
        let (size, PieceCopy { piece, copy }) = (self.size(), self.under());
        document.work(|making| making.begin(piece, size, copy).note(round, text));
        self.due = true;
    }

    /// Moves the hands on or back; it is `now`, s. A step that leads nowhere changes nothing,
    /// not even the clock.
    pub(crate) fn move_hands(&mut self, document: &mut Document, now: f64, make: &Make) {
        let under = self.under();
        let PieceCopy { piece, copy } = under;
        let Some(Ok(course)) = self.course(piece) else { return };
        let course = Arc::clone(course);
        let size = self.size.clone();
        let begun = self.begun(document.project(), under).cloned();
        let is_begun = begun.is_some();
        let fresh = || Progress::new(piece, copy).at_size(size.as_deref());
        let mut progress = begun.unwrap_or_else(fresh);
        let before = progress.place();
        let Some(stitches) = self.moved(make, &mut progress, &course, &before, is_begun) else {
            return;
        };
        let onward = matches!(make, Make::Step(_) | Make::Done);
        let spent = self.clock.step(now);
        if onward {
            progress.spend(spent, stitches, &document.piece().habits);
        }
        if onward || matches!(make, Make::GoTo(_)) {
            self.came_from(before);
        }
        document.work(|making| *making.begin(piece, size.as_deref(), copy) = progress);
        self.due = true;
    }

    /// Moves `progress` on or back; returns how many stitches that was, or none where it leads
    /// nowhere.
    fn moved(
        &mut self,
        make: &Make,
        progress: &mut Progress,
        course: &WorkedPiece,
        before: &ReturnPlace,
        is_begun: bool,
    ) -> Option<u32> {
        let moved = match make {
            Make::Step(by) => {
                let stitches = progress.advance(course, *by);
                return (stitches > 0).then_some(stitches);
            }
            Make::Done => progress.acknowledge(course),
            Make::Back => match self.trail().pop() {
                Some(place) => {
                    progress.take_place(course, place);
                    true
                }
                None => progress.back(course),
            },
            Make::GoTo(round) => {
                progress.go_to(course, *round);
                progress.place() != *before
            }
            _ => {
                progress.accept(course);
                is_begun
            }
        };
        moved.then_some(0)
    }
}
