-- Each visit as it stands, for lists: filled from its newest entry in the same transaction.
DROP VIEW visits;

CREATE TABLE visits (
  visit_id   TEXT    PRIMARY KEY,
  store_seq  INTEGER NOT NULL UNIQUE,
  seq        INTEGER NOT NULL,
  opened_at  TEXT    NOT NULL,
  changed_at TEXT    NOT NULL,
  client     TEXT    NOT NULL,
  date       TEXT    NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TRIGGER entries_move_their_visit AFTER INSERT ON entries
BEGIN
  INSERT INTO visits VALUES (new.visit_id, new.store_seq, new.seq, new.made_at, new.made_at,
                             coalesce(json_extract(new.body, '$.client'), ''),
                             coalesce(json_extract(new.body, '$.date'), ''))
  ON CONFLICT (visit_id) DO UPDATE
  SET store_seq = excluded.store_seq, seq = excluded.seq, changed_at = excluded.changed_at,
      client = excluded.client, date = excluded.date;
END;

INSERT INTO visits
SELECT last.visit_id, last.store_seq, last.seq, first.made_at, last.made_at,
       coalesce(json_extract(last.body, '$.client'), ''), coalesce(json_extract(last.body, '$.date'), '')
FROM entries AS last
JOIN entries AS first ON first.visit_id = last.visit_id AND first.seq = 1
WHERE last.seq = (SELECT max(seq) FROM entries WHERE visit_id = last.visit_id);
