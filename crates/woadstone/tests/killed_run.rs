//! A run outlives the program: killed in the middle, started again, no clock and no note is lost.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use std::{
    io::{BufRead, BufReader, Read, Write},
    net::TcpStream,
    path::Path,
    process::{Child, Command, Stdio},
    sync::Mutex,
    time::Duration,
};

/// The program as it serves a bench, and a browser's cookie for it.
struct Served {
    child: Mutex<Child>,
    port: u16,
    token: String,
}

/// An answer's status, headers and text.
struct Answer {
    status: u16,
    head: String,
    text: String,
}

impl Served {
    fn start(home: &Path) -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_woadstone"))
            .args(["serve", "--port", "0", "--home"])
            .arg(home)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let address = lines
            .map(|line| line.unwrap())
            .find_map(|line| Some(line.split_once("http://127.0.0.1:")?.1.to_owned()))
            .expect("the program prints its address");
        let digits: String = address.chars().take_while(char::is_ascii_digit).collect();
        let mut served = Self {
            child: Mutex::new(child),
            port: digits.parse().unwrap(),
            token: String::new(),
        };
        let head = served.get("/").head;
        let cookie = format!("woadstone-{}=", served.port);
        let after = head.split_once(&cookie).unwrap().1;
        served.token = after.split(';').next().unwrap().to_owned();
        served
    }

    fn try_send(&self, method: &str, path: &str, body: &str) -> std::io::Result<Answer> {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port))?;
        stream.set_read_timeout(Some(Duration::from_secs(60)))?;
        let host = format!("127.0.0.1:{}", self.port);
        write!(
            stream,
            "{method} {path} HTTP/1.1\r\nHost: {host}\r\nOrigin: http://{host}\r\nCookie: woadstone-{}={}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\nConnection: close\r\n\r\n{body}",
            self.port,
            self.token,
            body.len()
        )?;
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes)?;
        let all = String::from_utf8(bytes).unwrap();
        let Some((head, text)) = all.split_once("\r\n\r\n") else {
            return Err(std::io::ErrorKind::UnexpectedEof.into());
        };
        Ok(Answer {
            status: head.split(' ').nth(1).unwrap().parse().unwrap(),
            head: head.to_owned(),
            text: text.to_owned(),
        })
    }

    fn send(&self, method: &str, path: &str, body: &str) -> Answer {
        self.try_send(method, path, body).unwrap()
    }

    fn get(&self, path: &str) -> Answer {
        self.send("GET", path, "")
    }

    fn post(&self, path: &str, fields: &str) -> Answer {
        let answer = self.send("POST", path, &format!("token={}&{fields}", self.token));
        assert_eq!(answer.status, 303, "{fields}: {}", answer.text);
        answer
    }

    fn run(&self, path: &str) -> serde_json::Value {
        serde_json::from_str(&self.get(&format!("{path}.json")).text).unwrap()
    }

    /// Ends it as a power cut would.
    fn kill(&self) {
        let mut child = self.child.lock().unwrap();
        // On Unix this is SIGKILL, which no program can answer.
        child.kill().unwrap();
        child.wait().unwrap();
    }
}

impl Drop for Served {
    /// A test that fails leaves no program behind.
    fn drop(&mut self) {
        if let Ok(child) = self.child.get_mut() {
            let _ = child.kill();
            let _ = child.wait();
        }
    }
}

fn location(answer: &Answer) -> String {
    let line = answer
        .head
        .lines()
        .find_map(|l| l.strip_prefix("location: "));
    line.unwrap().split('#').next().unwrap().to_owned()
}

/// The recipe of six shirts, sent by the form.
const RECIPE: &str = "name=Two+scarves&class=acid-milling&fibre=wool&kitchen=metric&weight=80+g&pieces=2&water=ratio&water-amount=30%3A1&dye-1-name=blue&dye-1-amount=2+%25+owf&dye-1-form=powder&auxiliary-1-name=vinegar&auxiliary-1-amount=20+ml%2FL";

#[test]
fn killing_the_program_loses_no_clock_and_no_note() {
    let home = tempfile::tempdir().unwrap();
    let first = Served::start(home.path());
    let recipe = location(&first.post("/recipes/new", RECIPE));
    let begun = |title: &str| {
        let fields = format!("revision=1&title={title}&trial=");
        location(&first.post(&format!("{recipe}/runs"), &fields))
    };
    // Two runs with three clocks, one of them noted a quarter of an hour late.
    let (red, blue) = (begun("red+pot"), begun("blue+pot"));
    first.post(&red, "step=1&do=start&ago=15");
    first.post(&red, "step=2&do=start");
    first.post(&blue, "step=1&do=start&ago=2");
    first.post(&red, "step=1&warm=40");
    first.post(&red, "step=1&tap=dry+spots+were+left");
    first.post(&red, "do=remark&words=hard+water+today");
    first.post(&red, "step=2&do=stop");
    let waters = format!("{red}/rinse");
    first.post(&waters, "do=read&water=bath&volume=2.2+L&looks_like=1:8");
    first.post(&waters, "do=read&water=rinse&volume=2+L&looks_like=1:50");
    first.post(
        &waters,
        "do=read&of=2&water=rinse&volume=2+L&looks_like=1:64",
    );
    let read = first.run(&waters);
    assert_eq!(read["events"].as_array().unwrap().len(), 3);
    let before = [first.run(&red), first.run(&blue)];
    assert_eq!(before[0]["events"].as_array().unwrap().len(), 6);

    // Killed while notes come in: each that was answered for must be there, the last may be.
    let answered = std::thread::scope(|scope| {
        let writer = scope.spawn(|| {
            let mut answered = 0;
            loop {
                let fields = format!(
                    "token={}&step=1&do=remark&words=stroke+{answered}",
                    first.token
                );
                match first.try_send("POST", &blue, &fields) {
                    Ok(answer) if answer.status == 303 => answered += 1,
                    _ => return answered,
                }
            }
        });
        std::thread::sleep(Duration::from_millis(700));
        first.kill();
        writer.join().unwrap()
    });
    assert!(answered > 0, "notes came in before it was killed");

    let again = Served::start(home.path());
    let after = [again.run(&red), again.run(&blue)];
    assert_eq!(after[0], before[0]);
    assert_eq!(again.run(&waters), read, "readings of waters are all there");
    assert_eq!(read["counts"][1]["what"]["rinse"]["looks_like"], "1:64");
    let noted = after[1]["events"].as_array().unwrap();
    let more = noted.len() - 1 - answered;
    assert!(
        more <= 1,
        "of notes that nobody was told of, one at most is there"
    );
    for stroke in 0..answered {
        let words = format!("stroke {stroke}");
        let is_it = |note: &serde_json::Value| note["what"]["remarked"] == words.as_str();
        assert!(
            noted.iter().any(is_it),
            "{words} was answered for and is lost"
        );
    }
    let page = again.get(&red).text;
    // The clock has gone on: fifteen minutes and some seconds.
    assert!(
        page.contains("15:0") || page.contains("15:1"),
        "the clock goes on"
    );
    assert!(page.contains("dry spots were left") && page.contains("hard water today"));
    let began = before[0]["counts"].as_array().unwrap();
    let start = began
        .iter()
        .find(|n| n["step"] == 1 && n["what"] == "started")
        .unwrap();
    assert!(page.contains(&format!("data-since=\"{}\"", start["at_s"])));
    // And it can be stopped, by the program that was started anew.
    again.post(&red, "step=1&do=stop");
    assert!(again.run(&red)["events"].as_array().unwrap().len() == 7);
    again.kill();
}
