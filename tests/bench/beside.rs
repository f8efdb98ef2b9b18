//! One entry while long work goes on beside it, beside the same entry alone. As at the window's desk, one mutex guards the
//! store, and the long work takes what it needs under it and goes on without.

use std::io::Cursor;
use std::ops::ControlFlow;
use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::thread;

use image::{ImageFormat, RgbImage};
use panside_bay::Bay;
use panside_bay::clock::SystemClock;
use panside_bay::closing::SavedPages;
use panside_bay::enter::{Actor, Answer, Command, Head, JobId, new_request};
use panside_bay::plan::NoPlan;

use crate::Outcome;
use crate::times::{Times, row};

/// Entries of a turn alone, then as many with the long work beside them.
const TURN: usize = 20;
const TURNS: usize = 15;
/// The sides of a photo in pixels: twelve million in all.
const PHOTO: [u32; 2] = [4000, 3000];
/// Different photos that are taken in one after the other.
const PHOTOS: usize = 8;

/// How a piece of long work went; what went wrong is told in words, which go from thread to thread.
type Done = Result<(), String>;

/// A bay with one long job, and one in which a step is begun and left over and over.
struct Desk {
    bay: Mutex<Bay>,
    long: JobId,
    open: JobId,
    photos: Vec<Vec<u8>>,
    over: AtomicBool,
    /// How often the long work was begun.
    begun: AtomicUsize,
}

/// Begins and leaves a step in turn.
struct Entering {
    actor: Actor,
    commands: [Command; 2],
    head: Head,
    number: usize,
}

/// Prints the rows of a store with a walked job and one that was only started.
pub fn rows(dir: &Path) -> Outcome<()> {
    let mut bay = Bay::open_at_once(dir, Box::new(SystemClock::new()), None)?;
    let jobs = bay.jobs()?;
    let long = jobs.iter().max_by_key(|line| line.events).ok_or("no job for a record")?.job;
    let open = jobs.iter().min_by_key(|line| line.events).ok_or("no job to enter at")?.job;
    let mut entering = Entering::at(&mut bay, open)?;
    let photos = (0..PHOTOS).map(photo).collect::<Result<_, _>>()?;
    let (bay, over, begun) = (Mutex::new(bay), AtomicBool::new(false), AtomicUsize::new(0));
    let desk = Desk { bay, long, open, photos, over, begun };
    desk.row("entry while a record is saved", &mut entering, Desk::save_record)?;
    desk.row("entry while a photo is taken in", &mut entering, Desk::take_in_photo)?;
    desk.row("entry while a plan is searched", &mut entering, Desk::search_plan)?;
    Ok(desk.bay.into_inner().unwrap_or_else(PoisonError::into_inner).close()?)
}

impl Desk {
    fn bay(&self) -> MutexGuard<'_, Bay> {
        self.bay.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn row(&self, name: &str, entering: &mut Entering, work: fn(&Desk) -> Done) -> Outcome<()> {
        let (mut beside, mut alone) = (Times::default(), Times::default());
        for _ in 0..TURNS {
            self.turn(entering, &mut alone)?;
            self.over.store(false, Ordering::Relaxed);
            let before = self.begun.load(Ordering::Relaxed);
            thread::scope(|scope| -> Outcome<()> {
                let working = scope.spawn(|| self.work(work));
                while self.begun.load(Ordering::Relaxed) == before && !working.is_finished() {
                    thread::yield_now();
                }
                let entered = self.turn(entering, &mut beside);
                self.over.store(true, Ordering::Relaxed);
                working.join().map_err(|_| "the work beside broke off")??;
                entered
            })?;
        }
        row(&format!("{name}: p50"), beside.percentile(50), alone.percentile(50), "<= 1.2");
        row(&format!("{name}: p99"), beside.percentile(99), alone.percentile(99), "");
        Ok(())
    }

    /// Does the long work again and again until the entries are through.
    fn work(&self, work: fn(&Desk) -> Done) -> Done {
        while !self.over.load(Ordering::Relaxed) {
            work(self)?;
        }
        Ok(())
    }

    fn turn(&self, entering: &mut Entering, times: &mut Times) -> Outcome<()> {
        for _ in 0..TURN {
            times.time(|| entering.enter(&mut self.bay(), self.open))?;
        }
        Ok(())
    }

    fn save_record(&self) -> Done {
        let taken = self.bay().to_record(self.long).map_err(said)?;
        self.begun.fetch_add(1, Ordering::Relaxed);
        taken.save(SavedPages::Record).map(drop).map_err(said)
    }

    fn take_in_photo(&self) -> Done {
        let intake = self.bay().photo_intake(self.long).map_err(said)?;
        let number = self.begun.fetch_add(1, Ordering::Relaxed);
        let photo = intake.take_in(&self.photos[number % PHOTOS]).map_err(said)?;
        self.bay().keep_photo(&photo).map(drop).map_err(said)
    }

    fn search_plan(&self) -> Done {
        let taken = self.bay().to_plan(self.open).map_err(said)?;
        self.begun.fetch_add(1, Ordering::Relaxed);
        let found = taken.best(&mut |_| match self.over.load(Ordering::Relaxed) {
            true => ControlFlow::Break(()),
            false => ControlFlow::Continue(()),
        });
        match found {
            Ok(_) | Err(NoPlan::Cancelled) => Ok(()),
            Err(none) => Err(said(none)),
        }
    }
}

impl Entering {
    /// Finds who can begin which step of a job and leave it again.
    fn at(bay: &mut Bay, job: JobId) -> Outcome<Entering> {
        let people = bay.setup()?.people;
        let steps = bay.page(job)?.view.steps;
        for person in &people {
            for (role, step) in
                person.roles.iter().flat_map(|role| steps.iter().map(move |step| (role, step)))
            {
                let (actor, step) = (Actor { id: person.id, role: *role }, step.id.clone());
                let commands = [Command::Begin { step: step.clone() }, Command::Leave { step }];
                let mut entering = Entering { actor, commands, head: bay.head(job)?, number: 0 };
                if entering.enter(bay, job).is_ok() {
                    entering.enter(bay, job)?;
                    return Ok(entering);
                }
            }
        }
        Err("no step can be begun".into())
    }

    fn enter(&mut self, bay: &mut Bay, job: JobId) -> Outcome<()> {
        let command = &self.commands[self.number % 2];
        match bay.enter(job, self.head, new_request(), &self.actor, command)? {
            Answer::Entered { head, .. } => {
                self.head = head;
                self.number += 1;
                Ok(())
            }
            Answer::Refused(refusal) => Err(refusal.said_by(bay.speaker()).into()),
        }
    }
}

fn said(error: impl std::error::Error) -> String {
    error.to_string()
}

/// A photo like no other, grainy as a camera's.
fn photo(number: usize) -> Result<Vec<u8>, image::ImageError> {
    let [width, height] = PHOTO;
    let grain = |x: u32, y: u32| (x.wrapping_mul(73) ^ y.wrapping_mul(151) ^ ((x * y) >> 7)) as u8 >> 3;
    let picture = RgbImage::from_fn(width, height, |x, y| {
        image::Rgb([(x >> 4) as u8 ^ grain(x, y), (y >> 4) as u8 ^ grain(y, x), number as u8 ^ grain(x, x)])
    });
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, ImageFormat::Jpeg)?;
    Ok(bytes.into_inner())
}
