//! `cargo xtask serve`: builds the page and serves it on this machine.

use crate::{Done, build, hash, place};
use std::path::Path;
use std::time::Duration;
use tiny_http::{Header, Method, Request, Response, Server};

const USUAL_PORT: u16 = 8017;

/// Builds, serves, prints the address, and builds again when a source changes.
///
/// # Errors
/// The page does not build, or the port is taken.
pub fn command(arguments: &[String]) -> Done {
    let wish = Wish::read(arguments)?;
    build::command()?;
    let server = open(&wish)?;
    let address = server.server_addr();
    println!(
        "\n  http://{address}/\n\n  Ctrl-C ends it. A saved change is built at once; reload to see it."
    );
    let mut seen = sources();
    loop {
        match server.recv_timeout(Duration::from_millis(500)) {
            Ok(Some(request)) => answer(request),
            Ok(None) => {
                let now = sources();
                if now != seen {
                    seen = now;
                    if let Err(message) = build::command() {
                        eprintln!("✗ {message}\n  The page before that is still served.");
                    }
                }
            }
            Err(error) => return Err(format!("the server stopped: {error}")),
        }
    }
}

struct Wish {
    host: String,
    port: Option<u16>,
}

impl Wish {
    fn read(arguments: &[String]) -> Result<Self, String> {
        let mut wish = Self {
            host: "127.0.0.1".into(),
            port: None,
        };
        let mut rest = arguments.iter();
        while let Some(name) = rest.next() {
            let value = rest.next().ok_or_else(|| format!("{name} needs a value"))?;
            match name.as_str() {
                "--port" => {
                    let port = value.parse().map_err(|_| {
                        format!("--port {value}: a number from 0 to 65535; 0 takes a free one")
                    })?;
                    wish.port = Some(port);
                }
                "--host" => wish.host.clone_from(value),
                _ => {
                    return Err(format!(
                        "serve knows --port N and --host ADDRESS, not {name}"
                    ));
                }
            }
        }
        Ok(wish)
    }
}

/// The usual port, or a free one when that is taken; a port asked for is kept to.
fn open(wish: &Wish) -> Result<Server, String> {
    let listen = |port: u16| Server::http((wish.host.as_str(), port));
    match wish.port {
        Some(port) => listen(port).map_err(|error| {
            format!(
                "cannot listen on {}:{port}: {error}; try --port 0",
                wish.host
            )
        }),
        None => listen(USUAL_PORT)
            .or_else(|_| listen(0))
            .map_err(|error| format!("cannot listen on {}: {error}", wish.host)),
    }
}

fn answer(request: Request) {
    let asked = request.url().split(['?', '#']).next().unwrap_or("/");
    let name = if asked.ends_with('/') {
        format!("{asked}index.html")
    } else {
        asked.to_owned()
    };
    let name = name.trim_start_matches('/').to_owned();
    let inside = !name.split('/').any(|part| part == ".." || part.is_empty());
    let found = if inside && matches!(request.method(), Method::Get | Method::Head) {
        std::fs::read(place::dist().join(&name)).ok()
    } else {
        None
    };
    // A visitor who left while being answered is no failure of the server.
    let _ = match found {
        Some(bytes) => {
            let mut response = Response::from_data(bytes);
            for (field, value) in [
                ("Content-Type", content_type(&name)),
                ("Cache-Control", "no-cache"),
            ] {
                if let Ok(header) = Header::from_bytes(field, value) {
                    response.add_header(header);
                }
            }
            request.respond(response)
        }
        None => request.respond(Response::from_string("not found\n").with_status_code(404)),
    };
}

fn content_type(name: &str) -> &'static str {
    match name.rsplit('.').next().unwrap_or("") {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

/// One value for the state of everything that the page is built from.
fn sources() -> String {
    let root = place::root();
    let mut state = String::new();
    for folder in ["src", "styles", "static", "locales"] {
        let folder = root.join(folder);
        for name in place::files(&folder).unwrap_or_default() {
            note(&folder.join(name), &mut state);
        }
    }
    for file in ["index.html", "Cargo.toml", "Cargo.lock", "build.rs"] {
        note(&root.join(file), &mut state);
    }
    hash::of(state.as_bytes())
}

fn note(path: &Path, state: &mut String) {
    if let Ok(changed) = path.metadata().and_then(|data| data.modified()) {
        state.push_str(&format!("{} {changed:?}\n", path.display()));
    }
}
