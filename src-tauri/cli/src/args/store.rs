//! `store` on the command line.

use std::path::PathBuf;

use clap::{Args, Subcommand};

/// `store`.
#[derive(Debug, Args)]
pub struct StoreArgs {
    /// What to do with it.
    #[command(subcommand)]
    pub command: StoreCommand,
}

/// What can be done with a store.
#[derive(Debug, Subcommand)]
pub enum StoreCommand {
    /// Verify the journal's chains, the head file, the list of jobs, documents and photos
    Check {
        /// The folder of the store.
        dir: PathBuf,
        /// Print the answer as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Make everything that is derived anew from the journal, and take away photo files that no entry names
    Rebuild {
        /// The folder of the store.
        dir: PathBuf,
    },
    /// Take in a checklist of the shop's own, prove it and adopt it, so that jobs can be started with it
    ///
    /// It is proved for the vehicles of the spec sheets that fit it, those of the store and those given here; where no
    /// sheet fits, for every vehicle, if it depends on none. Exit codes as for prove: 1 refuted, 2 not decided, 3 does not
    /// load; then it is not adopted.
    ///
    /// Example: panside-cli store adopt /tmp/bay drain-plug.checklist.json --who "R. Ode"
    Adopt {
        /// The folder of the store.
        dir: PathBuf,
        /// The checklist, with its parts in the folder parts beside it.
        file: PathBuf,
        /// Who of the shop adopts it, by name.
        #[arg(long, value_name = "NAME")]
        who: String,
        /// A spec sheet that the store does not have, such as one of the program. May be given more than once.
        #[arg(long, value_name = "FILE")]
        sheet: Vec<PathBuf>,
    },
    /// List the shop's own checklists
    Checklists {
        /// The folder of the store.
        dir: PathBuf,
        /// Print the list as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Write one of the shop's own checklists to a file, byte for byte as it was proved
    Checklist {
        /// The folder of the store.
        dir: PathBuf,
        /// The checklist's id, as `store checklists` lists it.
        id: String,
        /// The file.
        #[arg(long)]
        out: PathBuf,
    },
    /// Back up a store, photos included, while it is in use
    ///
    /// The folder must be there, best on another disk. Each backup is a folder in it, named by its time (UTC) and its
    /// newest entry, and read back and verified before it gets that name; the photos of all backups are kept once. Older
    /// ones beyond those to be kept are taken away, but never the newest of an epoch. Exit code 1: it was made, and says
    /// which photos and texts the store itself no longer has whole.
    ///
    /// Example: panside-cli store backup /tmp/bay --to /media/stick/backups
    Backup {
        /// The folder of the store.
        dir: PathBuf,
        /// The folder for backups.
        #[arg(long)]
        to: PathBuf,
        /// How many backups of this store are kept.
        #[arg(long, default_value_t = panside_bay::way_back::KEEP, value_parser = clap::value_parser!(u32).range(1..))]
        keep: u32,
        /// Keep this as the shop's plan too: while the window is open it then makes a backup every so many hours, up to 720.
        /// The store must not be open elsewhere at this moment.
        #[arg(long, value_name = "HOURS", value_parser = clap::value_parser!(u32).range(1..=720))]
        every: Option<u32>,
    },
    /// List the backups in a folder, the newest first, each read again and verified
    ///
    /// Exit code 1: one of them does not hold or can't be read.
    Backups {
        /// The folder for backups.
        folder: PathBuf,
    },
    /// Restore a backup, and say how old it is and what it lacks
    ///
    /// A store that stands in the place is moved aside with all its files, to FOLDER.before-TIME; nothing of it is
    /// deleted. The restored store begins a new epoch, so that its next entries can't be taken for those that are lost.
    /// Exit code 1: it was restored, and photos are missing.
    ///
    /// Example: panside-cli store restore /media/stick/backups/2026-11-30T081500Z-354 --into /tmp/bay
    Restore {
        /// The backup's folder, as `store backups` lists it.
        backup: PathBuf,
        /// The folder of the store.
        #[arg(long)]
        into: PathBuf,
        /// Why, for those who read the journal later. Absent: that it was restored from a backup.
        #[arg(long)]
        why: Option<String>,
    },
    /// Go on from what is there in a new epoch: newest entries are lost, or the folder was copied or set back
    ///
    /// Look first with `store check` and `jobs` whether the entries that matter are there; a backup may have them.
    /// A journal that is broken within is not mended by this: restore a backup or salvage.
    GoOn {
        /// The folder of the store.
        dir: PathBuf,
        /// Why, for those who read the journal later.
        #[arg(long)]
        why: String,
    },
    /// Save what holds of a damaged store into a new one, and list what does not
    ///
    /// The damaged store is only read, page by page where it must be. Saved are the entries of each job from the first
    /// on, as far as they verify, and the texts and photos whose hashes hold. The new store is a device of its own that
    /// received them. The list stands in the new store too, as salvage.txt. Exit code 1: not everything could be saved.
    ///
    /// Example: panside-cli store salvage /tmp/bay --into /tmp/bay-saved
    Salvage {
        /// The folder of the damaged store.
        dir: PathBuf,
        /// The folder of the new store; it must be empty or not there.
        #[arg(long)]
        into: PathBuf,
    },
}
