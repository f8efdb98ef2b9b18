//! Long work goes on beside the store, on the job as it was taken out: no entry waits for it.

use std::io::Cursor;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use image::{ImageFormat, RgbImage};
use panside_bay::closing::SavedPages;
use panside_bay::enter::EntryValue;

use crate::support::{Shop, begin};

/// Stops a piece of work half-way until somebody lets it go on.
struct HalfWay {
    reached: Sender<()>,
    may_go_on: Receiver<()>,
}

impl HalfWay {
    fn new() -> (HalfWay, Receiver<()>, Sender<()>) {
        let ((reached, is_reached), (go_on, may_go_on)) = (channel(), channel());
        (HalfWay { reached, may_go_on }, is_reached, go_on)
    }

    fn wait(&self) {
        self.reached.send(()).unwrap();
        self.may_go_on.recv().unwrap();
    }
}

#[test]
fn an_entry_is_taken_while_a_record_is_half_made_and_the_record_is_of_the_job_before_it() {
    let mut shop = Shop::new();
    let job = shop.start();
    let step = shop.bay.page(job).unwrap().view.steps[0].id.clone();
    let (half_way, is_half_way, go_on) = HalfWay::new();
    let taken = shop.bay.to_record(job).unwrap();
    let making = thread::spawn(move || {
        let before = taken.record_page().unwrap();
        half_way.wait();
        (before, taken.record_page().unwrap(), taken.save(SavedPages::Record).unwrap())
    });
    is_half_way.recv().unwrap();
    let written = shop.enter(job, &begin(&step)).len() as u64;
    go_on.send(()).unwrap();
    let (before, after, path) = making.join().unwrap();
    assert_eq!((before.events, after.events), (1, 1));
    assert_eq!(before.head, after.head);
    assert!(path.ends_with("-1.pdf"), "{path}");
    assert_eq!(shop.bay.record_page(job).unwrap().events, 1 + written);
}

#[test]
fn an_entry_is_taken_before_while_and_after_a_photo_is_written() {
    let mut shop = Shop::new();
    let job = shop.start();
    let steps: Vec<String> =
        shop.bay.page(job).unwrap().view.steps.iter().map(|step| step.id.clone()).collect();
    let mut bytes = Cursor::new(Vec::new());
    RgbImage::from_pixel(600, 400, image::Rgb([10, 90, 40])).write_to(&mut bytes, ImageFormat::Png).unwrap();
    let (half_way, is_half_way, go_on) = HalfWay::new();
    let intake = shop.bay.photo_intake(job).unwrap();
    let taking = thread::spawn(move || {
        half_way.wait();
        let photo = intake.take_in(bytes.get_ref()).unwrap();
        half_way.wait();
        photo
    });
    is_half_way.recv().unwrap();
    shop.enter(job, &begin(&steps[0]));
    go_on.send(()).unwrap();
    is_half_way.recv().unwrap();
    assert_eq!(shop.bay.check().unwrap().photos, 0, "its files are written, and it is not kept yet");
    shop.bay.put_draft(job, "level/stick", "58").unwrap();
    go_on.send(()).unwrap();
    let value = shop.bay.keep_photo(&taking.join().unwrap()).unwrap();
    assert!(matches!(value, EntryValue::Photo { width: 600, height: 400, .. }), "{value:?}");
    let checked = shop.bay.check().unwrap();
    assert_eq!((checked.photos, checked.troubles.len()), (1, 0));
}
