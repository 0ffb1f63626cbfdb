//! Secrets that are compared without telling how near a guess came; one of them shows a change to
//! come from one of our own pages.

use axum::http::{HeaderMap, header};

/// A random secret of this process: in a cookie that no script and no other site can read, and in
/// every form.
pub(crate) struct Token(String);

/// The form field that carries it; for scripts, the header of the same name.
pub(crate) const FIELD: &str = "token";
/// The header by which a script may send it.
pub(crate) const HEADER: &str = "x-woadstone-token";

impl Token {
    pub(crate) fn random() -> Self {
        let bytes: [u8; 32] = rand::random();
        Self(bytes.iter().map(|b| format!("{b:02x}")).collect())
    }

    /// A secret that was drawn otherwise.
    pub(crate) fn of(secret: String) -> Self {
        Self(secret)
    }

    pub(crate) fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether `given` is this token; takes as long whatever the first difference.
    pub(crate) fn is(&self, given: &str) -> bool {
        let (own, given) = (self.0.as_bytes(), given.as_bytes());
        own.len() == given.len()
            && own
                .iter()
                .zip(given)
                .fold(0u8, |differences, (a, b)| differences | (a ^ b))
                == 0
    }

    /// Whether the request carries the cookie with this token.
    pub(crate) fn in_cookie(&self, headers: &HeaderMap, port: u16) -> bool {
        let name = cookie_name(port);
        headers
            .get_all(header::COOKIE)
            .iter()
            .filter_map(|value| value.to_str().ok())
            .flat_map(|value| value.split(';'))
            .filter_map(|pair| pair.trim().split_once('='))
            .any(|(key, value)| key == name && self.is(value))
    }

    /// The `Set-Cookie` value.
    pub(crate) fn cookie(&self, port: u16) -> String {
        format!(
            "{}={}; Path=/; HttpOnly; SameSite=Strict",
            cookie_name(port),
            self.0
        )
    }
}

/// Cookies are shared by all ports of a host, so that two benches side by side need two names.
fn cookie_name(port: u16) -> String {
    format!("woadstone-{port}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_whole_token_counts() {
        let token = Token::random();
        assert!(token.is(token.as_str()));
        assert!(!token.is(&token.as_str()[1..]));
        assert!(!token.is(""));
        assert!(!Token::random().is(token.as_str()));
    }
}
