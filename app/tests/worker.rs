//! What the studio's threads promise: every wish is answered, in its own way, and a panic is an
//! answer too.

use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use egui::Context;
use plumpline::work::worker::{Heard, Newest, Queue, Ticket, Voice, Waiting, Worker};

/// A gate at which work waits until the test lets it on.
struct Gate {
    on: SyncSender<()>,
    /// What has begun, in order.
    begun: Receiver<u32>,
}

/// A worker that doubles numbers; each waits at the gate. Thirteen panics.
fn doubling<W: Waiting<Ask = u32, Task = u32>>() -> (Worker<W, u32>, Gate) {
    let (on, wait) = sync_channel::<()>(100);
    let (tell, begun) = sync_channel(100);
    let wait = Arc::new(Mutex::new(wait));
    let worker = Worker::new("doubling", move || {
        let (wait, tell) = (Arc::clone(&wait), tell.clone());
        move |number: u32, voice: &Voice<'_, W, u32>| {
            tell.send(number).expect("the test goes on");
            wait.lock().expect("one waits").recv().expect("the test goes on");
            assert_ne!(number, 13, "thirteen");
            if !voice.is_vain() {
                voice.say(2 * number);
            }
        }
    });
    (worker, Gate { on, begun })
}

/// Waits until all is answered; returns what was heard.
fn answers<W: Waiting<Ask = u32, Task = u32>>(
    worker: &mut Worker<W, u32>,
) -> Vec<(Ticket, String)> {
    let mut heard = Vec::new();
    let began = Instant::now();
    while worker.is_busy() {
        heard.extend(std::iter::from_fn(|| worker.hear()).map(told));
        assert!(began.elapsed() < Duration::from_secs(20), "it never ends: {heard:?}");
        std::thread::yield_now();
    }
    heard
}

fn told(heard: Heard<u32>) -> (Ticket, String) {
    (heard.to, heard.answer.map_or_else(|broken| broken.to_string(), |n| n.to_string()))
}

#[test]
fn every_wish_of_a_queue_is_carried_out_in_order() {
    let (mut worker, gate) = doubling::<Queue<u32>>();
    let ctx = Context::default();
    let tickets: Vec<Ticket> = (1..=9).map(|n| worker.ask(&ctx, n)).collect();
    assert_eq!(tickets, (1..=9).collect::<Vec<_>>());
    assert!(worker.is_busy());
    for _ in 0..9 {
        gate.on.send(()).expect("the worker waits");
    }
    let expected: Vec<_> = (1..=9).map(|n| (n, (2 * n).to_string())).collect();
    assert_eq!(answers(&mut worker), expected);
}

#[test]
fn of_the_newest_the_one_between_is_never_begun_and_the_vain_one_is_left() {
    let (mut worker, gate) = doubling::<Newest<u32>>();
    let ctx = Context::default();
    worker.ask(&ctx, 1);
    assert_eq!(gate.begun.recv(), Ok(1));
    worker.ask(&ctx, 2);
    assert_eq!(worker.ask(&ctx, 3), 3);
    gate.on.send(()).expect("the worker waits");
    gate.on.send(()).expect("the worker waits");
    assert_eq!(answers(&mut worker), [(3, "6".to_owned())], "1 was vain, 2 was never begun");
    assert_eq!(gate.begun.try_iter().collect::<Vec<_>>(), [3]);
}

#[test]
fn a_panic_is_an_answer_and_what_follows_is_still_carried_out() {
    let (mut worker, gate) = doubling::<Queue<u32>>();
    let ctx = Context::default();
    for n in [12, 13, 14] {
        worker.ask(&ctx, n);
        gate.on.send(()).expect("the worker waits");
    }
    let heard = answers(&mut worker);
    assert_eq!(heard.len(), 3, "{heard:?}");
    assert_eq!((&heard[0], &heard[2]), (&(1, "24".into()), &(3, "28".into())));
    let (to, why) = &heard[1];
    assert!(*to == 2 && why.contains("thirteen") && why.lines().count() == 1, "{why}");
    worker.ask(&ctx, 15);
    gate.on.send(()).expect("the worker waits");
    assert_eq!(answers(&mut worker), [(4, "30".to_owned())]);
}

#[test]
fn a_panic_of_the_newest_is_heard_once_and_begins_nothing_again() {
    let (mut worker, gate) = doubling::<Newest<u32>>();
    worker.ask(&Context::default(), 13);
    gate.on.send(()).expect("the worker waits");
    assert_eq!(answers(&mut worker).len(), 1);
    assert_eq!(gate.begun.try_iter().count(), 1);
    assert!(worker.hear().is_none() && !worker.is_busy());
}

#[test]
fn what_a_panic_left_half_done_is_not_worked_on_with() {
    let mut worker: Worker<Queue<u32>, u32> = Worker::new("counting", || {
        let mut sum = 0;
        move |number, voice: &Voice<'_, Queue<u32>, u32>| {
            sum += number;
            assert_ne!(number, 13);
            voice.say(sum);
        }
    });
    for n in [1, 2, 13, 4] {
        worker.ask(&Context::default(), n);
    }
    let sums: Vec<String> = answers(&mut worker).into_iter().map(|(_, said)| said).collect();
    assert_eq!((&*sums[0], &*sums[1], &*sums[3]), ("1", "3", "4"));
}

#[test]
fn finishing_waits_for_all_and_tells_what_was_not_heard() {
    let (mut worker, gate) = doubling::<Queue<u32>>();
    for n in [5, 13, 6, 7, 8, 9, 10] {
        worker.ask(&Context::default(), n);
        gate.on.send(()).expect("the worker waits");
    }
    let rest: Vec<_> = worker.finish().into_iter().map(told).collect();
    assert_eq!(rest.len(), 7);
    assert!(rest[1].1.contains("thirteen"));
    assert_eq!(rest[6], (7, "20".to_owned()));
}

#[test]
fn a_worker_that_is_dropped_ends_its_thread() {
    let (alive, gone) = sync_channel::<()>(1);
    let mut worker: Worker<Queue<u32>, u32> = Worker::new("ending", move || {
        let alive = alive.clone();
        move |number, voice: &Voice<'_, Queue<u32>, u32>| {
            let _held = &alive;
            voice.say(number);
        }
    });
    worker.ask(&Context::default(), 1);
    assert_eq!(answers(&mut worker).len(), 1);
    drop(worker);
    assert!(gone.recv().is_err(), "all that the thread held is gone");
}
