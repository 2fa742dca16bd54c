//! The one kind of thread the studio has: it takes wishes, and every wish is answered, be it by
//! a result or by why there is none. A wish is only let go where its kind says so: of
//! [`Newest`] an older one is never carried out once there is a newer; of a [`Queue`] every one
//! is, in order.

use std::any::Any;
use std::collections::VecDeque;
use std::fmt;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use egui::Context;

use crate::kit::words::Language;

/// Answers that wait to be heard; a thread that has more to say waits too. Pages are large.
const MOST_ANSWERS: usize = 4;

/// What waits to be carried out, and what becomes of it when more is asked for.
pub trait Waiting: Default + Send + 'static {
    /// What is asked for.
    type Ask: Send + 'static;
    /// What is carried out at once.
    type Task: Send + 'static;

    /// Takes a wish in.
    fn put(&mut self, ask: Self::Ask);

    /// Takes out what is to be done next.
    fn next(&mut self) -> Option<Self::Task>;

    /// How many of the wishes taken in last are still to be carried out.
    fn left(&self) -> u64;

    /// Whether what waits makes the task under way vain.
    fn is_newer(&self) -> bool;
}

/// The newest wish alone.
#[derive(Debug)]
pub struct Newest<Ask>(Option<Ask>);

impl<Ask> Default for Newest<Ask> {
    fn default() -> Self {
        Self(None)
    }
}

impl<Ask: Send + 'static> Waiting for Newest<Ask> {
    type Ask = Ask;
    type Task = Ask;

    fn put(&mut self, ask: Ask) {
        self.0 = Some(ask);
    }

    fn next(&mut self) -> Option<Ask> {
        self.0.take()
    }

    fn left(&self) -> u64 {
        u64::from(self.0.is_some())
    }

    fn is_newer(&self) -> bool {
        self.0.is_some()
    }
}

/// Every wish, in order.
#[derive(Debug)]
pub struct Queue<Ask>(VecDeque<Ask>);

impl<Ask> Default for Queue<Ask> {
    fn default() -> Self {
        Self(VecDeque::new())
    }
}

impl<Ask: Send + 'static> Waiting for Queue<Ask> {
    type Ask = Ask;
    type Task = Ask;

    fn put(&mut self, ask: Ask) {
        self.0.push_back(ask);
    }

    fn next(&mut self) -> Option<Ask> {
        self.0.pop_front()
    }

    fn left(&self) -> u64 {
        self.0.len() as u64
    }

    fn is_newer(&self) -> bool {
        false
    }
}

/// A wish as its asker knows it again: they are counted from 1.
pub type Ticket = u64;

/// An answer, and to which wish.
#[derive(Debug)]
pub struct Heard<Answer> {
    /// The last of the wishes that it answers.
    pub to: Ticket,
    /// The answer, or why there is none.
    pub answer: Result<Answer, Broken>,
}

/// A wish that came to no end: the work on it panicked or was stopped, or there was no thread
/// for it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    why: String,
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let line: Vec<&str> = self.why.split_whitespace().collect();
        f.write_str(&line.join(" "))
    }
}

/// How the work tells what it finds.
pub struct Voice<'a, W: Waiting, Answer> {
    to: Ticket,
    shared: &'a Shared<W>,
    tell: &'a SyncSender<Message<Answer>>,
    ctx: &'a Context,
}

impl<W: Waiting, Answer> Voice<'_, W, Answer> {
    /// Gives an answer; a task may have several.
    pub fn say(&self, answer: Answer) {
        let heard = Heard { to: self.to, answer: Ok(answer) };
        // The window may be gone by now; then nobody needs to hear it.
        let _ = self.tell.send(Message::Heard(heard));
        self.ctx.request_repaint();
    }

    /// Whether nobody waits for the rest of this task any more: something newer is asked for,
    /// or the window is gone.
    pub fn is_vain(&self) -> bool {
        let state = self.shared.lock();
        state.end == End::AtOnce || state.waiting.is_newer()
    }

    /// Draws the window anew, where the work shows by other ways how far it is.
    pub fn nudge(&self) {
        self.ctx.request_repaint();
    }
}

type Work<W, Answer> = Box<dyn FnMut(<W as Waiting>::Task, &Voice<'_, W, Answer>)>;
type Begin<W, Answer> = Arc<dyn Fn() -> Work<W, Answer> + Send + Sync>;

/// A thread and what is asked of it. The thread begins with the first wish; when this is
/// dropped it ends after the task under way, see also [`Worker::finish`].
pub struct Worker<W: Waiting, Answer> {
    name: &'static str,
    begin: Begin<W, Answer>,
    /// Wishes there were.
    asked: Ticket,
    /// Up to which wish all is answered.
    done: Ticket,
    /// When the wish that waits longest was made, or one after it.
    since: Instant,
    running: Option<Running<W, Answer>>,
    /// What is to be heard before the thread is listened to.
    own: VecDeque<Heard<Answer>>,
}

impl<W: Waiting, Answer> fmt::Debug for Worker<W, Answer> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut shown = f.debug_struct("Worker");
        shown.field("name", &self.name).field("asked", &self.asked).field("done", &self.done);
        shown.finish_non_exhaustive()
    }
}

struct Running<W: Waiting, Answer> {
    shared: Arc<Shared<W>>,
    hear: Receiver<Message<Answer>>,
    thread: JoinHandle<()>,
}

/// What the thread says.
enum Message<Answer> {
    Heard(Heard<Answer>),
    /// All wishes up to this one are answered.
    Done(Ticket),
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum End {
    #[default]
    No,
    /// Once all that waits is done.
    WhenDone,
    AtOnce,
}

#[derive(Default)]
struct State<W> {
    waiting: W,
    asked: Ticket,
    /// What those who ask are spoken to in.
    language: Language,
    end: End,
}

#[derive(Default)]
struct Shared<W> {
    state: Mutex<State<W>>,
    changed: Condvar,
}

impl<W: Waiting> Shared<W> {
    /// A thread that panicked left whole wishes behind: they are only ever put and taken.
    fn lock(&self) -> MutexGuard<'_, State<W>> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn put(&self, change: impl FnOnce(&mut State<W>)) {
        change(&mut self.lock());
        self.changed.notify_one();
    }

    /// The next task and the last of the wishes it answers, once there is one; none when all
    /// is over.
    fn next(&self) -> Option<(Ticket, W::Task)> {
        let mut state = self.lock();
        loop {
            if state.end == End::AtOnce {
                return None;
            }
            if let Some(task) = state.waiting.next() {
                crate::kit::words::speak(state.language);
                return Some((state.asked - state.waiting.left(), task));
            }
            if state.end == End::WhenDone {
                return None;
            }
            state = self.changed.wait(state).unwrap_or_else(PoisonError::into_inner);
        }
    }
}

impl<W: Waiting, Answer: Send + 'static> Worker<W, Answer> {
    /// A worker called `name`. What `begin` makes does the work; it is made on the thread, and
    /// made anew after a panic, so that nothing half done is worked on with.
    pub fn new<F>(name: &'static str, begin: impl Fn() -> F + Send + Sync + 'static) -> Self
    where
        F: FnMut(W::Task, &Voice<'_, W, Answer>) + 'static,
    {
        let begin: Begin<W, Answer> = Arc::new(move || Box::new(begin()));
        let own = VecDeque::new();
        Self { name, begin, asked: 0, done: 0, since: Instant::now(), running: None, own }
    }

    /// Asks for something; `ctx` is woken by the answer. Returns the wish's number.
    pub fn ask(&mut self, ctx: &Context, ask: W::Ask) -> Ticket {
        if !self.is_busy() {
            self.since = Instant::now();
        }
        self.asked += 1;
        let asked = self.asked;
        let language = crate::kit::words::spoken();
        self.on_the_thread(ctx, |state| {
            state.waiting.put(ask);
            state.language = language;
            state.asked = asked;
        });
        asked
    }

    /// Tells the thread something; it is begun if need be.
    fn on_the_thread(&mut self, ctx: &Context, tell: impl FnOnce(&mut State<W>)) {
        if self.running.is_none() {
            match self.start(ctx) {
                Ok(running) => self.running = Some(running),
                Err(error) => {
                    let why = say!(
                        "trouble-no-thread-could-be-started-error",
                        error = error.to_string()
                    );
                    self.own.push_back(Heard { to: self.asked, answer: Err(Broken { why }) });
                    ctx.request_repaint();
                }
            }
        }
        if let Some(running) = &self.running {
            running.shared.put(tell);
        }
    }

    /// Gives up the task under way: its answer is that it was stopped, whatever may still come
    /// of it. Its thread is left to itself, which may hang on what never ends, and another
    /// takes what waits.
    pub fn give_up(&mut self, ctx: &Context) {
        let Some(running) = self.running.take() else { return };
        // Under the lock, so that what is taken out here is not begun there.
        let mut state = running.shared.lock();
        state.end = End::AtOnce;
        let waiting = std::mem::take(&mut state.waiting);
        drop(state);
        running.shared.changed.notify_one();
        for message in running.hear.try_iter() {
            match message {
                Message::Heard(heard) => self.own.push_back(heard),
                Message::Done(to) => self.done = self.done.max(to),
            }
        }
        let under_way = self.asked - waiting.left();
        if self.done < under_way {
            let answer = Err(Broken { why: say!("trouble-it-was-stopped").into() });
            self.own.push_back(Heard { to: under_way, answer });
        }
        self.since = Instant::now();
        if waiting.left() > 0 {
            let asked = self.asked;
            self.on_the_thread(ctx, |state| (state.waiting, state.asked) = (waiting, asked));
        }
        ctx.request_repaint();
    }

    fn start(&self, ctx: &Context) -> std::io::Result<Running<W, Answer>> {
        let shared = Arc::new(Shared::default());
        let (tell, hear) = sync_channel(MOST_ANSWERS);
        let (theirs, begin, ctx) = (Arc::clone(&shared), Arc::clone(&self.begin), ctx.clone());
        let thread = std::thread::Builder::new()
            .name(self.name.into())
            .spawn(move || run(&theirs, &begin, &tell, &ctx))?;
        Ok(Running { shared, hear, thread })
    }

    /// The next answer that has come, if any.
    pub fn hear(&mut self) -> Option<Heard<Answer>> {
        if let Some(heard) = self.own.pop_front() {
            if heard.answer.is_err() {
                self.done = self.done.max(heard.to);
            }
            return Some(heard);
        }
        loop {
            match self.running.as_ref()?.hear.try_recv().ok()? {
                Message::Heard(heard) => return Some(heard),
                Message::Done(to) => self.done = self.done.max(to),
            }
        }
    }

    /// Whether something that was asked for is still to be answered.
    pub fn is_busy(&self) -> bool {
        self.done < self.asked
    }

    /// How long something that was asked for has been waited for; none if nothing is.
    pub fn busy_for(&self) -> Option<Duration> {
        self.is_busy().then(|| self.since.elapsed())
    }

    /// The number of the last wish.
    pub fn asked(&self) -> Ticket {
        self.asked
    }

    /// Waits until all that was asked for is done; returns what was still to be heard.
    pub fn finish(mut self) -> Vec<Heard<Answer>> {
        let mut rest: Vec<Heard<Answer>> = self.own.drain(..).collect();
        if let Some(running) = self.running.take() {
            running.shared.put(|state| state.end = End::WhenDone);
            // It ends when the thread does, for nobody else can say anything then.
            for message in running.hear.iter() {
                if let Message::Heard(heard) = message {
                    rest.push(heard);
                }
            }
            running.thread.join().ok(); // Panics in its work were heard, and it has no other.
        }
        rest
    }
}

impl<W: Waiting, Answer> Drop for Worker<W, Answer> {
    fn drop(&mut self) {
        if let Some(running) = &self.running {
            running.shared.put(|state| state.end = End::AtOnce);
        }
    }
}

fn run<W: Waiting, Answer>(
    shared: &Shared<W>,
    begin: &Begin<W, Answer>,
    tell: &SyncSender<Message<Answer>>,
    ctx: &Context,
) {
    let mut work: Option<Work<W, Answer>> = None;
    while let Some((to, task)) = shared.next() {
        let voice = Voice { to, shared, tell, ctx };
        // What a panic may have left half done is dropped below.
        let done = catch_unwind(AssertUnwindSafe(|| {
            let work = work.get_or_insert_with(|| begin());
            work(task, &voice);
        }));
        if let Err(panic) = done {
            work = None;
            let broken = Broken { why: words(panic.as_ref()) };
            let _ = tell.send(Message::Heard(Heard { to, answer: Err(broken) }));
        }
        if tell.send(Message::Done(to)).is_err() {
            // Nobody hears; but what is asked for is done, until there is no asker either.
            continue;
        }
        ctx.request_repaint();
    }
}

/// What a panic says.
fn words(panic: &(dyn Any + Send)) -> String {
    let text = panic.downcast_ref::<&str>().map(|text| (*text).to_owned());
    let text = text.or_else(|| panic.downcast_ref::<String>().cloned());
    text.unwrap_or_else(|| say!("trouble-the-program-is-at-fault").into())
}
