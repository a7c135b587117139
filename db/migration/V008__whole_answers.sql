-- Digests of the pairs and draws beside an answer, so that the trail can tell of them too; empty for answers from before.
ALTER TABLE run ADD COLUMN pairs VARCHAR(64) DEFAULT '' NOT NULL;
ALTER TABLE run ADD COLUMN draws VARCHAR(64) DEFAULT '' NOT NULL;
