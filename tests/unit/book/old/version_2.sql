-- A book as beegarth wrote it at schema version 2: three entries, the last in place of the second.
CREATE TABLE entry(
  row INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK(length(id) = 36),
  device TEXT NOT NULL CHECK(length(device) BETWEEN 1 AND 100),
  sequence INTEGER NOT NULL CHECK(sequence >= 1),
  kind TEXT NOT NULL CHECK(length(kind) BETWEEN 1 AND 50),
  happened TEXT NOT NULL CHECK(happened GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  happened_hour REAL CHECK(happened_hour BETWEEN 0 AND 24),
  written_ms INTEGER NOT NULL CHECK(written_ms >= 0),
  written_counter INTEGER NOT NULL CHECK(written_counter >= 0),
  who TEXT NOT NULL CHECK(length(who) BETWEEN 1 AND 100),
  supersedes TEXT REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  payload TEXT NOT NULL CHECK(json_valid(payload)),
  previous TEXT NOT NULL CHECK(length(previous) = 64),
  hash TEXT NOT NULL UNIQUE CHECK(length(hash) = 64),
  UNIQUE(device, sequence)
) STRICT;
CREATE INDEX entry_by_writing ON entry(written_ms, written_counter);
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;
CREATE TRIGGER entry_is_never_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id OR (device = NEW.device AND sequence = NEW.sequence))
BEGIN SELECT RAISE(ABORT, 'an entry is never replaced'); END;
CREATE TABLE this_copy(
  only INTEGER PRIMARY KEY CHECK(only = 1),
  device TEXT NOT NULL CHECK(length(device) BETWEEN 1 AND 100),
  identity TEXT NOT NULL
) STRICT;
CREATE INDEX entry_by_kind ON entry(kind, happened);
CREATE INDEX entry_by_target ON entry(supersedes) WHERE supersedes IS NOT NULL;
PRAGMA user_version=2;
INSERT INTO entry VALUES(1,'01a21c09-0998-7000-99ba-1ff700010a1d','d-fe52badceb31dae4',1,'note','2026-05-01',NULL,1795766684056,0,'keeper',NULL,'{"text":"kept by an older beegarth"}','0000000000000000000000000000000000000000000000000000000000000000','b1ef1cde37624bd062f2a9e9f1cd92ba5ae687453cf9efbbb3e6c1ec103cdef7');
INSERT INTO entry VALUES(2,'01a21c09-09de-7000-a3ee-c4ed0511eaec','d-fe52badceb31dae4',2,'note','2026-05-02',NULL,1795766684126,0,'keeper',NULL,'{"text":"snow on the lids"}','b1ef1cde37624bd062f2a9e9f1cd92ba5ae687453cf9efbbb3e6c1ec103cdef7','10beb73799ddba9642d7c7b2fc5bf84632cdf779226d05693b888f15cdab1244');
INSERT INTO entry VALUES(3,'01a21c09-0a2a-7000-8cae-ed0b775be9cf','d-fe52badceb31dae4',3,'note','2026-05-02',NULL,1795766684202,0,'keeper','01a21c09-09de-7000-a3ee-c4ed0511eaec','{"text":"hail on the lids"}','10beb73799ddba9642d7c7b2fc5bf84632cdf779226d05693b888f15cdab1244','5033baf4bb89290b95345ee8a50adfd318192a83ce8f7fef8a6da40bd8f68c23');
INSERT INTO this_copy VALUES(1,'d-00000000000000000000','1.2.3');
PRAGMA application_id=1650812263;
