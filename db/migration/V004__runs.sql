-- Runs: what a campaign was on the day it was asked, drawn many times. A row is added when a run is asked for and completed when it
-- ends; after that only its result may be let go, since document, state of work and seed give it again to the digit. No foreign key:
-- runs and decisions outlive the campaign they were made for.
CREATE TABLE run (
  campaign_id      BIGINT NOT NULL,
  number           BIGINT NOT NULL,
  status           VARCHAR(10) NOT NULL,
  asked_at         TIMESTAMP(6) WITH TIME ZONE NOT NULL,
  asked_by         VARCHAR(300) NOT NULL,
  ended_at         TIMESTAMP(6) WITH TIME ZONE,
  campaign_version BIGINT NOT NULL,
  inputs           VARCHAR(64) NOT NULL,
  document         VARCHAR(64) NOT NULL,
  seed             BIGINT NOT NULL,
  trials           INTEGER NOT NULL,
  options          VARCHAR(10000) NOT NULL,
  editions         VARCHAR(100000) NOT NULL,
  repeats          BIGINT,
  trouble          VARCHAR(4000) NOT NULL,
  result           VARCHAR(64) NOT NULL,
  kept             BOOLEAN NOT NULL,
  CONSTRAINT run_key PRIMARY KEY (campaign_id, number),
  CONSTRAINT run_status CHECK (status IN ('waiting', 'running', 'done', 'failed', 'cancelled', 'stopped')),
  CONSTRAINT run_ends_when_it_ended CHECK ((status IN ('waiting', 'running')) = (ended_at IS NULL)),
  CONSTRAINT run_result_when_done CHECK ((status = 'done') = (result <> '')),
  CONSTRAINT run_kept_when_done CHECK (status = 'done' OR NOT kept));

-- Texts of runs, compressed, in pieces that every database takes: the frozen documents by their digest, and for each run the state of
-- the work (state), the answer (result), the pairs of options (pairs) and some of the single draws (draws).
CREATE TABLE run_piece (
  campaign_id BIGINT NOT NULL,
  belongs_to  VARCHAR(64) NOT NULL,
  what        VARCHAR(20) NOT NULL,
  ordinal     INTEGER NOT NULL,
  body        BYTEA NOT NULL,
  CONSTRAINT run_piece_key PRIMARY KEY (campaign_id, belongs_to, what, ordinal));

-- What somebody decided, and why. Rows are only ever added.
CREATE TABLE decision (
  campaign_id     BIGINT NOT NULL,
  number          BIGINT NOT NULL,
  decided_at      TIMESTAMP(6) WITH TIME ZONE NOT NULL,
  decided_by      VARCHAR(300) NOT NULL,
  kind            VARCHAR(60) NOT NULL,
  subject         VARCHAR(200) NOT NULL,
  text            VARCHAR(4000) NOT NULL,
  reason          VARCHAR(4000) NOT NULL,
  run             BIGINT,
  due             DATE,
  expected_effect VARCHAR(4000),
  taken_version   BIGINT,
  CONSTRAINT decision_key PRIMARY KEY (campaign_id, number));
