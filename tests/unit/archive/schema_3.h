#pragma once

#include <string_view>

namespace thawslip::test_support {

/// An archive as the third released schema had it, written by the program of that time: two
/// revisions of a day of two dishes, one of them filled twice; another day; labels and cards; bags
/// out, eaten and discarded. Text for the sqlite3 shell; it never changes.
inline constexpr std::string_view schema_3_archive =
    R"sql(
PRAGMA journal_mode = WAL;
BEGIN;
-- One revision of a day's description, byte for byte. Revisions of one description share a
-- lineage; the highest revision is the one that holds.
CREATE TABLE day (
    id          INTEGER PRIMARY KEY,
    lineage     INTEGER NOT NULL,
    revision    INTEGER NOT NULL,
    made        TEXT NOT NULL,              -- ISO 8601 date
    kitchen     TEXT NOT NULL,
    file        TEXT NOT NULL,              -- where it was read from
    recorded    TEXT NOT NULL,              -- the kitchen's date and time, ISO 8601
    hash        INTEGER NOT NULL,           -- of the description, to find it again
    description BLOB NOT NULL,
    UNIQUE (lineage, revision)
);
CREATE INDEX day_hash ON day (hash);
CREATE INDEX day_file ON day (file, made);

CREATE TABLE package (
    id         INTEGER PRIMARY KEY,
    day        INTEGER NOT NULL REFERENCES day,
    position   INTEGER NOT NULL,            -- within the description, from 1
    dish       TEXT NOT NULL,
    words      TEXT NOT NULL,               -- the dish folded for searching
    made       TEXT NOT NULL,
    keep_until TEXT NOT NULL,
    basis      TEXT NOT NULL CHECK (basis IN ('use by', 'best')),
    servings   INTEGER NOT NULL,            -- of one bag
    grams      REAL,                        -- of one bag
    bags       INTEGER NOT NULL,
    UNIQUE (day, position)
);

-- A bag that was labelled; `package` is the one of the newest revision that describes it.
CREATE TABLE bag (
    id      INTEGER PRIMARY KEY,
    package INTEGER NOT NULL REFERENCES package,
    number  INTEGER NOT NULL,
    state   TEXT NOT NULL CHECK (state IN ('frozen', 'out', 'eaten', 'thrown')),
    changed TEXT NOT NULL                   -- when it came into that state
);
CREATE INDEX bag_package ON bag (package, number);
CREATE INDEX bag_frozen ON bag (package) WHERE state = 'frozen';

-- Every id that was ever printed for a bag. A dish whose name was mended has new ids, and the
-- old labels still stick on the bags.
CREATE TABLE bag_id (
    id     TEXT PRIMARY KEY,
    bag    INTEGER NOT NULL REFERENCES bag,
    newest INTEGER NOT NULL                 -- 1 for the id of the newest revision
) WITHOUT ROWID;
CREATE INDEX bag_id_bag ON bag_id (bag);

CREATE TABLE print (
    id       INTEGER PRIMARY KEY,           -- in the order recorded, whatever the clock said
    first_at TEXT NOT NULL,
    last_at  TEXT NOT NULL,                 -- when the same was last printed again
    what     TEXT NOT NULL,                 -- "labels", "cards"…
    stock    TEXT NOT NULL,
    layout   TEXT NOT NULL,
    settings TEXT NOT NULL,                 -- all else that the same bytes need
    look     TEXT NOT NULL,                 -- hashes of stock, layouts and faces
    hash     INTEGER NOT NULL               -- of what, stock, layout, settings, look and days
);
CREATE INDEX print_hash ON print (hash);
CREATE INDEX print_first ON print (first_at);
CREATE INDEX print_last ON print (last_at);

CREATE TABLE print_day (
    print    INTEGER NOT NULL REFERENCES print,
    position INTEGER NOT NULL,
    day      INTEGER NOT NULL REFERENCES day,
    PRIMARY KEY (print, position)
) WITHOUT ROWID;
CREATE INDEX print_day_day ON print_day (day, print);

-- SQLite, "FTS5 Extension": external content, prefix indexes. The words are folded already, and
-- added beside each package (a trigger would need a schema that is trusted).
CREATE VIRTUAL TABLE dish_words USING fts5 (
    words, content = 'package', content_rowid = 'id', prefix = '2 3',
    tokenize = 'unicode61 remove_diacritics 0'
);
-- What two bags must share to be taken for one: allergens as they are meant and storage classes,
-- sorted, one a line. NULL: recorded by version 1, which did not keep them.
ALTER TABLE package ADD COLUMN allergens TEXT;
ALTER TABLE package ADD COLUMN classes TEXT;

-- How it is thawed: "refrigerator", "cold water", "microwave", "from frozen"; and for how long.
ALTER TABLE package ADD COLUMN thaw TEXT;
ALTER TABLE package ADD COLUMN thaw_minutes INTEGER;

-- A stock or layout of the cook's own that a print was made with, byte for byte, so that it can be
-- printed again when the file is changed or gone.
CREATE TABLE print_file (
    id    INTEGER PRIMARY KEY,
    print INTEGER NOT NULL REFERENCES print,
    name  TEXT NOT NULL,                    -- as in print.stock and print.layout
    bytes BLOB NOT NULL,
    UNIQUE (print, name)
);
-- Which batch of its name and day a package is: with dish and day what the ids of its bags are made
-- from. Bags of before are of the first batch of a kitchen without name and number.
ALTER TABLE package ADD COLUMN kitchen_number INTEGER NOT NULL DEFAULT 0;
ALTER TABLE package ADD COLUMN batch_kitchen TEXT NOT NULL DEFAULT '';
ALTER TABLE package ADD COLUMN batch INTEGER NOT NULL DEFAULT 1;

-- Which print it was first recorded by. Of before it is made of what both archives have where a
-- description came from one into the other: the time and the hash of its first revision.
ALTER TABLE package ADD COLUMN origin TEXT NOT NULL DEFAULT '';
UPDATE package SET origin = (SELECT f.recorded || ' ' || f.hash FROM day d JOIN day f
    ON f.lineage = d.lineage WHERE d.id = package.day ORDER BY f.revision LIMIT 1);
CREATE INDEX package_dish ON package (dish, made);

-- Whose file it was read from; empty: not known. And where it stands among the revisions of its
-- description, whichever archive they were recorded in: `recorded` in thousandths of a second since
-- 1970, but later than the revision before.
ALTER TABLE day ADD COLUMN station TEXT NOT NULL DEFAULT '';
ALTER TABLE day ADD COLUMN ordered INTEGER NOT NULL DEFAULT 0;
UPDATE day SET ordered = o.ordered FROM (
    SELECT id, latest + row_number() OVER (PARTITION BY lineage, latest ORDER BY revision) - 1
        AS ordered FROM (
        SELECT id, lineage, revision, 1000 * max(coalesce(CAST(strftime('%s', recorded) AS INTEGER),
            0)) OVER (PARTITION BY lineage ORDER BY revision) AS latest FROM day)) AS o
    WHERE o.id = day.id;

-- What happened to a bag. Never changed, never deleted; two archives are merged by all that is in
-- either. The last by (ordered, station, seq, state, at) is the bag's state, which bag.state and
-- bag.changed repeat.
CREATE TABLE bag_event (
    bag          INTEGER NOT NULL REFERENCES bag,
    ordered      INTEGER NOT NULL,          -- thousandths of a second since 1970: values.h, BagEvent
    station      TEXT NOT NULL,             -- by whom; empty: before stations had names
    seq          INTEGER NOT NULL,
    state        TEXT NOT NULL,
    at           TEXT NOT NULL,             -- the kitchen's date and time
    clock        INTEGER NOT NULL,          -- the station's clock, seconds since 1970
    clock_offset INTEGER NOT NULL,          -- what must be added to it
    boot         TEXT NOT NULL,
    uptime       INTEGER NOT NULL,          -- seconds since the boot
    PRIMARY KEY (bag, ordered, station, seq, state, at)
) WITHOUT ROWID;
CREATE INDEX bag_event_station ON bag_event (station, seq);
INSERT INTO bag_event SELECT id, 1000 * coalesce(CAST(strftime('%s', changed) AS INTEGER), 0), '', 0,
    state, changed, coalesce(CAST(strftime('%s', changed) AS INTEGER), 0), 0, '', 0 FROM bag;

-- Every time that something was printed, by a key made once for it.
CREATE TABLE print_key (
    key     TEXT PRIMARY KEY,
    print   INTEGER NOT NULL REFERENCES print,
    at      TEXT NOT NULL,
    station TEXT NOT NULL
) WITHOUT ROWID;
CREATE INDEX print_key_print ON print_key (print);
INSERT OR IGNORE INTO print_key SELECT first_at || ' ' || what, id, first_at, '' FROM print;
INSERT OR IGNORE INTO print_key SELECT last_at || ' ' || what, id, last_at, '' FROM print;
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description, station, ordered) VALUES
    (1, 1, 1, '2026-10-17', 'Orchard house', '/orchard/saturday.toml', '2026-10-17T14:05:00', -5785545982667324286, CAST('[day]
made    = 2026-10-17
kitchen = "Orchard house"

[[package]]
dish      = "Medlar and barley stew"
servings  = 4
bags      = 3
food      = "soup or stew"
weight    = "1.4 kg"
thickness = "30 mm"
contains  = ["celery"]

[[package]]
dish      = "Quince dumplings"
servings  = 2
bags      = 2
use_by    = 2026-12-24
contains  = ["wheat", "milk"]
' AS BLOB), '81d5f49aca42c689', 1792245900000);
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description, station, ordered) VALUES
    (2, 2, 1, '2026-10-18', '', '/orchard/sunday.toml', '2026-10-18T14:05:00', 2269904409080807831, CAST('[day]
made = 2026-10-18

[[package]]
dish     = "Damson crumble"
servings = 6
food     = "fruit pie"
use_by   = 2027-02-01
' AS BLOB), '81d5f49aca42c689', 1792332300000);
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description, station, ordered) VALUES
    (3, 1, 2, '2026-10-17', 'Orchard house', '/orchard/saturday.toml', '2026-10-19T14:05:00', -7113783551949428439, CAST('[day]
made    = 2026-10-17
kitchen = "Orchard house"

[[package]]
dish      = "Medlar and barley stew"
servings  = 4
bags      = 3
food      = "soup or stew"
weight    = "1.4 kg"
thickness = "30 mm"
contains  = ["celery"]

[[package]]
dish      = "Quince dumplings"
servings  = 3
bags      = 2
use_by    = 2026-12-24
contains  = ["wheat", "milk"]
' AS BLOB), '81d5f49aca42c689', 1792418700000);
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description, station, ordered) VALUES
    (4, 3, 1, '2026-10-17', 'Orchard house', '/orchard/saturday.toml', '2026-10-19T14:06:40', -7113783551949428439, CAST('[day]
made    = 2026-10-17
kitchen = "Orchard house"

[[package]]
dish      = "Medlar and barley stew"
servings  = 4
bags      = 3
food      = "soup or stew"
weight    = "1.4 kg"
thickness = "30 mm"
contains  = ["celery"]

[[package]]
dish      = "Quince dumplings"
servings  = 3
bags      = 2
use_by    = 2026-12-24
contains  = ["wheat", "milk"]
' AS BLOB), '81d5f49aca42c689', 1792418800000);
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (1, 1, 1, 'Medlar and barley stew', 'medlar and barley stew', '2026-10-17', '2026-12-17', 'best', 4, 1400.0, 3, 'celery
', 'soup or stew
', 'refrigerator', 4560, 0, 'Orchard house', 1, '0264a5ba157d8edc');
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (2, 1, 2, 'Quince dumplings', 'quince dumplings', '2026-10-17', '2026-12-24', 'use by', 2, NULL, 2, 'milk
wheat
', 'raw ground meat
', 'refrigerator', NULL, 0, 'Orchard house', 1, '0264a5ba157d8edc');
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (3, 2, 1, 'Damson crumble', 'damson crumble', '2026-10-18', '2027-02-01', 'use by', 6, NULL, 1, '', 'fruit pie
', 'refrigerator', NULL, 0, '', 1, 'd3e4d3aa7f049979');
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (4, 3, 1, 'Medlar and barley stew', 'medlar and barley stew', '2026-10-17', '2026-12-17', 'best', 4, 1400.0, 3, 'celery
', 'soup or stew
', 'refrigerator', 4560, 0, 'Orchard house', 1, '0264a5ba157d8edc');
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (5, 3, 2, 'Quince dumplings', 'quince dumplings', '2026-10-17', '2026-12-24', 'use by', 3, NULL, 2, 'milk
wheat
', 'raw ground meat
', 'refrigerator', NULL, 0, 'Orchard house', 1, '0264a5ba157d8edc');
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (6, 4, 1, 'Medlar and barley stew', 'medlar and barley stew', '2026-10-17', '2026-12-17', 'best', 4, 1400.0, 3, 'celery
', 'soup or stew
', 'refrigerator', 4560, 0, 'Orchard house', 316508313128, 'f282f3192e1471dc');
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes, kitchen_number, batch_kitchen, batch, origin) VALUES
    (7, 4, 2, 'Quince dumplings', 'quince dumplings', '2026-10-17', '2026-12-24', 'use by', 3, NULL, 2, 'milk
wheat
', 'raw ground meat
', 'refrigerator', NULL, 0, 'Orchard house', 316508313128, 'f282f3192e1471dc');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (1, 4, 1, 'eaten', '2026-10-20T14:08:20');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (2, 4, 2, 'thrown', '2026-10-20T14:10:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (3, 4, 3, 'out', '2026-10-20T14:11:40');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (4, 5, 1, 'frozen', '2026-10-17T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (5, 5, 2, 'frozen', '2026-10-17T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (6, 3, 1, 'frozen', '2026-10-18T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (7, 6, 1, 'frozen', '2026-10-19T14:06:40');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (8, 6, 2, 'frozen', '2026-10-19T14:06:40');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (9, 6, 3, 'frozen', '2026-10-19T14:06:40');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (10, 7, 1, 'frozen', '2026-10-19T14:06:40');
INSERT INTO bag (id, package, number, state, changed) VALUES
)sql"
    R"sql(    (11, 7, 2, 'frozen', '2026-10-19T14:06:40');
INSERT INTO bag_id (id, bag, newest) VALUES
    ('2VS-660-87W', 9, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('3CQ-1TM-889', 6, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('52M-758-87Z', 5, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('9QG-M38-87C', 4, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('F8W-AX8-87S', 2, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('J1R-A6W-877', 7, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('K0S-CE0-87X', 10, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('RAN-BEW-877', 1, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('RQS-P1M-87M', 3, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('VK6-TZC-87G', 8, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('XD3-0MR-875', 11, 1);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (1, '2026-10-17T14:05:00', '2026-10-17T14:05:00', 'labels', 'letter-2x5-4x2in', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
large_print = false
# settings
', 'program 0.1.0
stock letter-2x5-4x2in 75563840a36d3d76
layout wide f26c91cf9707021a
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', -6204774880138141638);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (2, '2026-10-17T14:06:40', '2026-10-17T14:06:40', 'cards', 'letter-cards-4.25x5.5in-cut', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
large_print = false
# settings
', 'program 0.1.0
stock letter-cards-4.25x5.5in-cut f9ea8d8b9208259d
layout cook-day-tall 199aa782c9cb8b64
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', 6788513874166866104);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (3, '2026-10-18T14:05:00', '2026-10-18T14:05:00', 'labels', 'letter-2x5-4x2in', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 3
spoiled = []
dpi = 300
small_modules = false
large_print = false
# settings
', 'program 0.1.0
stock letter-2x5-4x2in 75563840a36d3d76
layout wide f26c91cf9707021a
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', -607067155064779403);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (4, '2026-10-19T14:05:00', '2026-10-19T14:05:00', 'labels', 'letter-2x5-4x2in', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
large_print = false
# settings
', 'program 0.1.0
stock letter-2x5-4x2in 75563840a36d3d76
layout wide f26c91cf9707021a
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', -6204777079161398060);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (5, '2026-10-19T14:06:40', '2026-10-19T14:06:40', 'labels', 'letter-2x5-4x2in', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
large_print = false
# settings
', 'program 0.1.0
stock letter-2x5-4x2in 75563840a36d3d76
layout wide f26c91cf9707021a
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', -6204778178673026271);
INSERT INTO print_day (print, position, day) VALUES
    (1, 1, 1);
INSERT INTO print_day (print, position, day) VALUES
    (2, 1, 1);
INSERT INTO print_day (print, position, day) VALUES
    (3, 1, 2);
INSERT INTO print_day (print, position, day) VALUES
    (4, 1, 3);
INSERT INTO print_day (print, position, day) VALUES
    (5, 1, 4);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (1, 1792245900000, '81d5f49aca42c689', 1, 'frozen', '2026-10-17T14:05:00', 1792245900, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (1, 1792505200000, '81d5f49aca42c689', 4, 'out', '2026-10-20T14:06:40', 1792505200, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (1, 1792505300000, '81d5f49aca42c689', 5, 'eaten', '2026-10-20T14:08:20', 1792505300, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (2, 1792245900000, '81d5f49aca42c689', 1, 'frozen', '2026-10-17T14:05:00', 1792245900, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (2, 1792505400000, '81d5f49aca42c689', 6, 'thrown', '2026-10-20T14:10:00', 1792505400, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (3, 1792245900000, '81d5f49aca42c689', 1, 'frozen', '2026-10-17T14:05:00', 1792245900, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (3, 1792505500000, '81d5f49aca42c689', 7, 'out', '2026-10-20T14:11:40', 1792505500, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (4, 1792245900000, '81d5f49aca42c689', 1, 'frozen', '2026-10-17T14:05:00', 1792245900, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (5, 1792245900000, '81d5f49aca42c689', 1, 'frozen', '2026-10-17T14:05:00', 1792245900, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (6, 1792332300000, '81d5f49aca42c689', 2, 'frozen', '2026-10-18T14:05:00', 1792332300, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (7, 1792418800000, '81d5f49aca42c689', 3, 'frozen', '2026-10-19T14:06:40', 1792418800, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (8, 1792418800000, '81d5f49aca42c689', 3, 'frozen', '2026-10-19T14:06:40', 1792418800, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (9, 1792418800000, '81d5f49aca42c689', 3, 'frozen', '2026-10-19T14:06:40', 1792418800, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (10, 1792418800000, '81d5f49aca42c689', 3, 'frozen', '2026-10-19T14:06:40', 1792418800, 0, '', 0);
INSERT INTO bag_event (bag, ordered, station, seq, state, at, clock, clock_offset, boot, uptime) VALUES
    (11, 1792418800000, '81d5f49aca42c689', 3, 'frozen', '2026-10-19T14:06:40', 1792418800, 0, '', 0);
INSERT INTO print_key (key, print, at, station) VALUES
    ('232746c8b60942eb', 3, '2026-10-18T14:05:00', '81d5f49aca42c689');
INSERT INTO print_key (key, print, at, station) VALUES
    ('956a4efdb058c874', 5, '2026-10-19T14:06:40', '81d5f49aca42c689');
INSERT INTO print_key (key, print, at, station) VALUES
    ('9eee401a84d35900', 1, '2026-10-17T14:05:00', '81d5f49aca42c689');
INSERT INTO print_key (key, print, at, station) VALUES
    ('ddb1dbf316526e49', 4, '2026-10-19T14:05:00', '81d5f49aca42c689');
INSERT INTO print_key (key, print, at, station) VALUES
    ('fe4dbae8b2ccb527', 2, '2026-10-17T14:06:40', '81d5f49aca42c689');
INSERT INTO dish_words (rowid, words) SELECT id, words FROM package;
PRAGMA application_id = 1414021463;
PRAGMA user_version = 3;
COMMIT;
PRAGMA wal_checkpoint(TRUNCATE);
)sql";

} // namespace thawslip::test_support
