-- The journal holds facts: typed, chained, for good. What is still being worked on is a draft: it changes, is sealed,
-- and is forgotten. The code that runs this moves the newest document of each visit into a draft before `entries` goes.
CREATE TABLE facts (
  store_seq INTEGER PRIMARY KEY,
  id        TEXT    NOT NULL UNIQUE,
  stream    TEXT    NOT NULL,
  seq       INTEGER NOT NULL CHECK (seq >= 1),
  made_at   TEXT    NOT NULL,
  kind      TEXT    NOT NULL,
  version   INTEGER NOT NULL CHECK (version >= 1),
  about     TEXT    NOT NULL CHECK (json_valid(about)),
  key       TEXT    NOT NULL,
  body      BLOB    NOT NULL,
  hash      BLOB    NOT NULL CHECK (length(hash) = 32),
  UNIQUE (stream, seq)
) STRICT;

CREATE INDEX facts_by_key ON facts (key, store_seq) WHERE key <> '';
CREATE INDEX facts_by_kind ON facts (kind, store_seq);

CREATE TRIGGER facts_are_not_changed BEFORE UPDATE ON facts
BEGIN
  SELECT RAISE(ABORT, 'the journal is append-only');
END;

CREATE TRIGGER facts_are_not_removed BEFORE DELETE ON facts
BEGIN
  SELECT RAISE(ABORT, 'the journal is append-only');
END;

-- Keys of people and of visits, each sealed by the master key, which is not in this file; a destroyed one is empty.
CREATE TABLE keys (
  owner   TEXT PRIMARY KEY,
  wrapped BLOB NOT NULL
) STRICT, WITHOUT ROWID;

-- Which master key that is.
CREATE TABLE master (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  box BLOB NOT NULL
) STRICT;

CREATE TABLE drafts (
  visit_id   TEXT    PRIMARY KEY,
  store_seq  INTEGER NOT NULL UNIQUE,
  seq        INTEGER NOT NULL,
  save_id    TEXT    NOT NULL,
  opened_at  TEXT    NOT NULL,
  changed_at TEXT    NOT NULL,
  person     TEXT    NOT NULL,
  label      BLOB    NOT NULL,
  body       BLOB    NOT NULL
) STRICT;

CREATE INDEX drafts_by_person ON drafts (person) WHERE person <> '';

-- Every save of a draft that is there, so that one handed in again is known; nothing of what it held.
CREATE TABLE saves (
  store_seq INTEGER PRIMARY KEY AUTOINCREMENT,
  id        TEXT    NOT NULL UNIQUE,
  visit_id  TEXT    NOT NULL,
  seq       INTEGER NOT NULL,
  made_at   TEXT    NOT NULL,
  digest    BLOB    NOT NULL,
  UNIQUE (visit_id, seq)
) STRICT;
