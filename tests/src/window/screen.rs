//! A screen in memory and the web view's driver. Both end with the value.

use std::io::{BufRead, BufReader};
use std::net::{TcpListener, TcpStream};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use crate::window::place::folder;
use crate::window::programs::{not_started, state};
use crate::window::{Result, Trouble};

/// Seconds for a program to come up.
const PATIENCE: u64 = 120;

/// The size that the pages are laid out for, with 24 bits of colour.
const SIZE: &str = "1280x800x24";

/// A screen and a driver.
#[derive(Debug)]
pub struct Screen {
    display: Program,
    driver: Program,
    port: u16,
    /// What the window's web view keeps for itself goes here and not into the home of who tests.
    _home: tempfile::TempDir,
}

impl Screen {
    /// Starts Xvfb on a display that is free and WebKitWebDriver on a port that is free.
    ///
    /// # Errors
    /// When one is not installed or does not come up.
    pub fn start() -> Result<Screen> {
        let home = folder()?;
        let (display, name) = display()?;
        let port = free_port()?;
        let mut driver = Command::new("WebKitWebDriver");
        driver.arg(format!("--port={port}")).stdout(Stdio::null()).stderr(Stdio::null());
        driver.env("DISPLAY", name).env_remove("WAYLAND_DISPLAY");
        driver.env("TAURI_AUTOMATION", "true").env("TAURI_WEBVIEW_AUTOMATION", "true");
        for place in ["XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"] {
            driver.env(place, home.path());
        }
        driver.env("XDG_STATE_HOME", state());
        let driver = Program::start(&mut driver)?;
        wait_for_port(port)?;
        Ok(Screen { display, driver, port, _home: home })
    }

    /// Where the driver listens.
    #[must_use]
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// The processes that the driver started and that still run, by id.
    #[must_use]
    pub fn windows(&self) -> Vec<u32> {
        children(self.driver.0.id())
    }

    /// Waits until every window is closed and its process gone, so that its store is free.
    ///
    /// # Errors
    /// When one stays.
    pub fn wait_closed(&self) -> Result {
        let until = Instant::now() + Duration::from_secs(PATIENCE);
        while !self.windows().is_empty() {
            if Instant::now() > until {
                return Err(Trouble::wrong("A window was closed, and its process stays."));
            }
            sleep(Duration::from_millis(20));
        }
        Ok(())
    }

    /// Ends a process that the driver started, with no chance to do anything first.
    ///
    /// # Errors
    /// When it is none of the driver's, or `kill` fails.
    pub fn kill(&self, window: u32) -> Result {
        if !self.windows().contains(&window) {
            return Err(Trouble::wrong(format!("The process {window} is no window of this driver.")));
        }
        crate::window::programs::run(Command::new("kill").args(["-KILL", &window.to_string()])).map(drop)
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        for window in self.windows() {
            // It is gone already, or it goes now; there is nobody to tell.
            let _ = self.kill(window);
        }
        self.driver.end();
        self.display.end();
    }
}

/// A program that is ended with the value.
#[derive(Debug)]
struct Program(Child);

impl Program {
    fn start(command: &mut Command) -> Result<Program> {
        let name = command.get_program().to_string_lossy().into_owned();
        command.stdin(Stdio::null()).spawn().map(Program).map_err(|source| not_started(name, source))
    }

    fn end(&mut self) {
        // It is gone already, or it goes now; there is nobody to tell.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        self.end();
    }
}

/// Starts a screen in memory; it chooses its number itself and tells it.
fn display() -> Result<(Program, String)> {
    let mut xvfb = Command::new("Xvfb");
    xvfb.args(["-displayfd", "1", "-screen", "0", SIZE, "-nolisten", "tcp", "-noreset"]);
    let mut program = Program::start(xvfb.stdout(Stdio::piped()).stderr(Stdio::null()))?;
    let mut number = String::new();
    if let Some(out) = program.0.stdout.take() {
        BufReader::new(out)
            .read_line(&mut number)
            .map_err(|source| Trouble::Start { program: "Xvfb".into(), source })?;
    }
    match number.trim() {
        "" => Err(Trouble::NotUp("Xvfb".into(), PATIENCE)),
        number => Ok((program, format!(":{number}"))),
    }
}

fn free_port() -> Result<u16> {
    TcpListener::bind(("127.0.0.1", 0))
        .and_then(|listener| listener.local_addr())
        .map(|address| address.port())
        .map_err(|source| Trouble::Start { program: "a listener on a free port".into(), source })
}

fn wait_for_port(port: u16) -> Result {
    let until = Instant::now() + Duration::from_secs(PATIENCE);
    while TcpStream::connect(("127.0.0.1", port)).is_err() {
        if Instant::now() > until {
            return Err(Trouble::NotUp("WebKitWebDriver".into(), PATIENCE));
        }
        sleep(Duration::from_millis(20));
    }
    Ok(())
}

/// The children of a process, as `/proc` has them: the fourth field of `stat` is the parent (proc(5)); the name
/// before it is in brackets and may hold anything.
fn children(parent: u32) -> Vec<u32> {
    let Ok(processes) = std::fs::read_dir("/proc") else { return Vec::new() };
    let ids = processes.filter_map(|entry| entry.ok()?.file_name().to_str()?.parse::<u32>().ok());
    let is_child = |id: &u32| {
        let stat = std::fs::read_to_string(format!("/proc/{id}/stat")).unwrap_or_default();
        let after_name = stat.rsplit(')').next().unwrap_or_default();
        after_name.split_whitespace().nth(1) == Some(parent.to_string().as_str())
    };
    ids.filter(is_child).collect()
}
