-- A salon that was moved out leaves nothing behind: for the owner of the tables only, who serves may not.
CREATE OR REPLACE FUNCTION strandline.facts_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' AND current_setting('strandline.leaving', true) = 'yes' THEN
    RETURN NULL;
  END IF;
  RAISE EXCEPTION 'the journal is append-only';
END
$$;
