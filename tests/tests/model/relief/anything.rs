//! Pieces and views of every kind.

use plumpline_core::picture::relief::{PosedRelief, Quality, Relief, ReliefPose, ReliefView};
use plumpline_core::{Hand, plan};
use plumpline_tests::any::any_piece;
use proptest::prelude::*;

use super::{COLOURS, Picture, sample, view};

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_piece_can_be_drawn_from_anywhere(
        piece in any_piece(),
        turn in -400.0..400.0_f32,
        tilt in -90.0..90.0_f32,
        cutaway in any::<bool>(),
        draft in any::<bool>(),
        left in any::<bool>(),
    ) {
        let mut piece = piece;
        piece.hand = if left { Hand::Left } else { Hand::Right };
        let plan = plan(&piece).map_err(|e| TestCaseError::reject(e.to_string()))?;
        let relief = Relief::new(&piece, &plan);
        let quality = if draft { Quality::Draft } else { Quality::Full };
        let view = ReliefView { quality, ..view(&relief, 120, turn, tilt) };
        let parts = [PosedRelief { cutaway, ..PosedRelief::new(&relief, &COLOURS) }];
        let picture = Picture::of(&parts, &view);
        prop_assert!(picture.map.iter().any(|s| s.part == 1));
        for (pixel, seen) in picture.pixels.iter().zip(&picture.map) {
            prop_assert!((0..3).all(|c| pixel[c] <= pixel[3]), "premultiplied: {pixel:?}");
            prop_assert!(usize::from(seen.round) <= plan.rounds.len());
            if seen.round > 0 {
                let count = plan.rounds[usize::from(seen.round) - 1].count;
                prop_assert!(u32::from(seen.stitch) <= count && seen.stitch > 0);
            }
        }
        let holes = picture.holes(3);
        prop_assert!(cutaway || holes <= 2, "{holes} holes");
    }

    #[test]
    fn no_view_is_too_strange(
        numbers in proptest::array::uniform6(prop_oneof![
            Just(f32::NAN), Just(f32::INFINITY), Just(-1.0e30), Just(0.0), -1.0e4..1.0e4_f32
        ]),
    ) {
        let (project, plan) = sample("mushroom");
        let relief = Relief::new(&project.pieces[0], &plan);
        let [turn_deg, tilt_deg, scale, x, y, z] = numbers;
        let pose = ReliefPose { at: [z, x, y], ..ReliefPose::default() };
        let parts = [PosedRelief { pose, ..PosedRelief::new(&relief, &[]) }];
        let view = ReliefView {
            turn_deg, tilt_deg, scale, middle: [x, y, z], size: [9, 7], quality: Quality::Full,
        };
        let picture = Picture::of(&parts, &view);
        prop_assert!(picture.map.iter().all(|s| s.part <= 1));
    }
}
