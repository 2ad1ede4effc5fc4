-- The journal: what happened, in order, for good.
CREATE TABLE entries (
  store_seq INTEGER PRIMARY KEY,
  id        TEXT    NOT NULL UNIQUE,
  visit_id  TEXT    NOT NULL,
  seq       INTEGER NOT NULL CHECK (seq >= 1),
  made_at   TEXT    NOT NULL,
  kind      TEXT    NOT NULL,
  body      TEXT    NOT NULL CHECK (json_valid(body)),
  hash      BLOB    NOT NULL CHECK (length(hash) = 32),
  UNIQUE (visit_id, seq)
) STRICT;

CREATE TRIGGER entries_are_not_changed BEFORE UPDATE ON entries
BEGIN
  SELECT RAISE(ABORT, 'the journal is append-only');
END;

CREATE TRIGGER entries_are_not_removed BEFORE DELETE ON entries
BEGIN
  SELECT RAISE(ABORT, 'the journal is append-only');
END;

-- Each visit as it stands: its newest entry. Read from the journal every time, so it cannot differ from it.
CREATE VIEW visits AS
SELECT last.visit_id,
       last.seq,
       first.made_at AS opened_at,
       last.made_at AS changed_at,
       coalesce(json_extract(last.body, '$.client'), '') AS client,
       coalesce(json_extract(last.body, '$.date'), '') AS date,
       last.store_seq,
       last.body
FROM entries AS last
JOIN entries AS first ON first.visit_id = last.visit_id AND first.seq = 1
WHERE NOT EXISTS (SELECT 1 FROM entries AS later WHERE later.visit_id = last.visit_id AND later.seq > last.seq);
