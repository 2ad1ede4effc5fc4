-- Many salons in one database. Every table has the salon's key; whoever serves one sees its own rows only, twice over:
-- through views (so that the statements are those of the salon file) and by row-level security below them. Both ask
-- the setting strandline.salon of the transaction; where none is set nothing is seen and nothing is taken.
CREATE SCHEMA strandline;
REVOKE ALL ON SCHEMA strandline FROM PUBLIC;

-- Who serves takes this role: it owns nothing, so no wall is down for it.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'strandline_salon') THEN
    CREATE ROLE strandline_salon NOLOGIN;
  END IF;
  IF NOT pg_has_role(current_user, 'strandline_salon', 'MEMBER') THEN
    GRANT strandline_salon TO CURRENT_USER;
  END IF;
END
$$;
GRANT USAGE ON SCHEMA strandline TO strandline_salon;

CREATE TABLE strandline.migrated (version bigint NOT NULL);
GRANT SELECT ON strandline.migrated TO strandline_salon;

CREATE DOMAIN strandline.salon_key AS text COLLATE "C" CHECK (VALUE ~ '^[a-z0-9][a-z0-9-]{0,39}$');

-- `saves` is the newest save there ever was; its row is the lock of whoever writes in this salon.
CREATE TABLE strandline.all_salons (
  salon strandline.salon_key PRIMARY KEY DEFAULT current_setting('strandline.salon'),
  saves bigint NOT NULL DEFAULT 0
) WITH (fillfactor = 50);

CREATE TABLE strandline.all_facts (
  salon     strandline.salon_key NOT NULL DEFAULT current_setting('strandline.salon'),
  store_seq bigint NOT NULL,
  id        text COLLATE "C" NOT NULL,
  stream    text COLLATE "C" NOT NULL,
  seq       bigint NOT NULL CHECK (seq >= 1),
  made_at   text COLLATE "C" NOT NULL,
  kind      text COLLATE "C" NOT NULL,
  version   bigint NOT NULL CHECK (version >= 1),
  about     text COLLATE "C" NOT NULL,
  key       text COLLATE "C" NOT NULL,
  body      bytea NOT NULL,
  hash      bytea NOT NULL CHECK (length(hash) = 32),
  PRIMARY KEY (salon, store_seq),
  CONSTRAINT facts_id UNIQUE (salon, id),
  CONSTRAINT facts_stream UNIQUE (salon, stream, seq)
);
CREATE INDEX facts_by_key ON strandline.all_facts (salon, key, store_seq) WHERE key <> '';
CREATE INDEX facts_by_kind ON strandline.all_facts (salon, kind, store_seq);

CREATE FUNCTION strandline.facts_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the journal is append-only';
END
$$;
CREATE TRIGGER facts_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON strandline.all_facts
  FOR EACH STATEMENT EXECUTE FUNCTION strandline.facts_stay();

CREATE TABLE strandline.all_keys (
  salon   strandline.salon_key NOT NULL DEFAULT current_setting('strandline.salon'),
  owner   text COLLATE "C" NOT NULL,
  wrapped bytea NOT NULL,
  PRIMARY KEY (salon, owner)
);

CREATE TABLE strandline.all_masters (
  salon strandline.salon_key PRIMARY KEY DEFAULT current_setting('strandline.salon'),
  one   bigint NOT NULL CHECK (one = 1),
  box   bytea NOT NULL
);

CREATE TABLE strandline.all_drafts (
  salon      strandline.salon_key NOT NULL DEFAULT current_setting('strandline.salon'),
  visit_id   text COLLATE "C" NOT NULL,
  store_seq  bigint NOT NULL,
  seq        bigint NOT NULL,
  save_id    text COLLATE "C" NOT NULL,
  opened_at  text COLLATE "C" NOT NULL,
  changed_at text COLLATE "C" NOT NULL,
  person     text COLLATE "C" NOT NULL,
  label      bytea NOT NULL,
  body       bytea NOT NULL,
  PRIMARY KEY (salon, visit_id),
  UNIQUE (salon, store_seq)
);
CREATE INDEX drafts_by_person ON strandline.all_drafts (salon, person) WHERE person <> '';

-- The next save of this salon; never one again that was there.
CREATE FUNCTION strandline.next_save() RETURNS bigint LANGUAGE sql VOLATILE AS $$
  UPDATE strandline.all_salons SET saves = saves + 1 WHERE salon = current_setting('strandline.salon') RETURNING saves
$$;

CREATE TABLE strandline.all_saves (
  salon     strandline.salon_key NOT NULL DEFAULT current_setting('strandline.salon'),
  store_seq bigint NOT NULL DEFAULT strandline.next_save(),
  id        text COLLATE "C" NOT NULL,
  visit_id  text COLLATE "C" NOT NULL,
  seq       bigint NOT NULL,
  made_at   text COLLATE "C" NOT NULL,
  digest    bytea NOT NULL,
  PRIMARY KEY (salon, store_seq),
  UNIQUE (salon, id),
  UNIQUE (salon, visit_id, seq)
);

CREATE VIEW strandline.salons WITH (security_invoker = true, security_barrier = true) AS
  SELECT saves FROM strandline.all_salons WHERE salon = current_setting('strandline.salon');
CREATE VIEW strandline.facts WITH (security_invoker = true, security_barrier = true) AS
  SELECT store_seq, id, stream, seq, made_at, kind, version, about, key, body, hash
  FROM strandline.all_facts WHERE salon = current_setting('strandline.salon');
CREATE VIEW strandline.keys WITH (security_invoker = true, security_barrier = true) AS
  SELECT owner, wrapped FROM strandline.all_keys WHERE salon = current_setting('strandline.salon');
CREATE VIEW strandline.master WITH (security_invoker = true, security_barrier = true) AS
  SELECT one, box FROM strandline.all_masters WHERE salon = current_setting('strandline.salon');
CREATE VIEW strandline.drafts WITH (security_invoker = true, security_barrier = true) AS
  SELECT visit_id, store_seq, seq, save_id, opened_at, changed_at, person, label, body
  FROM strandline.all_drafts WHERE salon = current_setting('strandline.salon');
CREATE VIEW strandline.saves WITH (security_invoker = true, security_barrier = true) AS
  SELECT store_seq, id, visit_id, seq, made_at, digest
  FROM strandline.all_saves WHERE salon = current_setting('strandline.salon');

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['all_salons', 'all_facts', 'all_keys', 'all_masters', 'all_drafts', 'all_saves'] LOOP
    EXECUTE format('ALTER TABLE strandline.%I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE strandline.%I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY own_salon ON strandline.%I USING (salon = current_setting(''strandline.salon'')) '
                   'WITH CHECK (salon = current_setting(''strandline.salon''))', name);
  END LOOP;
END
$$;
GRANT SELECT, INSERT ON strandline.all_facts, strandline.facts, strandline.all_masters, strandline.master
  TO strandline_salon;
GRANT SELECT, INSERT, UPDATE, DELETE ON strandline.all_salons, strandline.salons, strandline.all_keys, strandline.keys,
  strandline.all_drafts, strandline.drafts, strandline.all_saves, strandline.saves TO strandline_salon;

-- What SQLite calls by these names.
CREATE FUNCTION strandline.json_valid(given text) RETURNS bigint LANGUAGE plpgsql IMMUTABLE AS $$
BEGIN
  PERFORM given::json;
  RETURN 1;
EXCEPTION WHEN OTHERS THEN
  RETURN 0;
END
$$;
CREATE FUNCTION strandline.json_extract(given text, path text) RETURNS text LANGUAGE plpgsql IMMUTABLE AS $$
BEGIN
  RETURN given::json ->> substr(path, 3);
EXCEPTION WHEN OTHERS THEN
  RETURN NULL;  -- a text that this database cannot hold (\u0000)
END
$$;
