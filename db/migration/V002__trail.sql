-- Who changed what, in one chain over all campaigns: each row's hash covers the hash of the row before it, so that no row
-- can be altered, left out or moved without breaking all that follow. Numbers have no gaps. Rows are only ever added.
CREATE TABLE trail (
  number      BIGINT NOT NULL,
  noted_at    TIMESTAMP(6) WITH TIME ZONE NOT NULL,
  who         VARCHAR(300) NOT NULL,
  campaign_id BIGINT,
  kind        VARCHAR(30) NOT NULL,
  subject     VARCHAR(200) NOT NULL,
  body        VARCHAR(1000000) NOT NULL,
  hash        VARCHAR(64) NOT NULL,
  CONSTRAINT trail_key PRIMARY KEY (number),
  CONSTRAINT trail_number_starts_at_1 CHECK (number >= 1));

CREATE INDEX trail_by_campaign ON trail (campaign_id, number);

-- Where the chain ends, kept apart, so that rows missing at its end are found; and the last change note of a release
-- that had no trail yet.
CREATE TABLE trail_head (
  only_row     INTEGER NOT NULL,
  numbered     BIGINT NOT NULL,
  hash         VARCHAR(64) NOT NULL,
  notes_before BIGINT NOT NULL,
  CONSTRAINT trail_head_key PRIMARY KEY (only_row),
  CONSTRAINT trail_head_is_one_row CHECK (only_row = 1));

INSERT INTO trail_head (only_row, numbered, hash, notes_before) SELECT 1, 0, 'start', COALESCE(MAX(id), 0) FROM change_note;
