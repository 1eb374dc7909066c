#pragma once

#include <string_view>

namespace thawslip::test_support {

/// An archive as the second released schema had it, written by the program of that time: two
/// revisions of a day of two dishes, the second dish renamed; another day, printed on a stock of
/// the cook's own; labels and cards; a bag eaten, one out. Text for the sqlite3 shell; it never
/// changes.
inline constexpr std::string_view schema_2_archive = R"sql(
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
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description) VALUES
    (1, 1, 1, '2026-10-17', 'Orchard house', '/orchard/saturday.toml', '2026-10-17T14:05:00', 2727225040570831345, CAST('[day]
made = 2026-10-17
kitchen = "Orchard house"

[[package]]
dish = "Parsnip and white bean stew"
servings = 6
bags = 3
food = "soup or stew"
weight = "2 kg"
contains = ["celery"]

[package.thaw]
method = "refrigerator"

[package.cook]
in = "pot"
time = "40 min"
until = "74 °C"

[[package]]
dish = "Quince compote"
servings = 4
bags = 2
use_by = 2027-03-01

[package.thaw]
method = "refrigerator"
' AS BLOB));
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description) VALUES
    (2, 2, 1, '2026-10-18', '', '/orchard/sunday.toml', '2026-10-18T14:05:00', -3910984825407806161, CAST('[day]
made = 2026-10-18

[[package]]
dish = "Leek and potato soup"
servings = 4
bags = 2
use_by = 2027-01-10
contains = ["milk"]

[package.thaw]
method = "refrigerator"

[package.cook]
in = "pot"
time = "30 min"
until = "74 °C"
' AS BLOB));
INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, description) VALUES
    (3, 1, 2, '2026-10-17', 'Orchard house', '/orchard/saturday.toml', '2026-10-19T14:05:00', -37357770007786483, CAST('[day]
made = 2026-10-17
kitchen = "Orchard house"

[[package]]
dish = "Parsnip and white bean stew"
servings = 5
bags = 3
food = "soup or stew"
weight = "2 kg"
contains = ["celery"]

[package.thaw]
method = "refrigerator"

[package.cook]
in = "pot"
time = "40 min"
until = "74 °C"

[[package]]
dish = "Quince and pear compote"
servings = 4
bags = 2
use_by = 2027-03-01

[package.thaw]
method = "refrigerator"
' AS BLOB));
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes) VALUES
    (1, 1, 1, 'Parsnip and white bean stew', 'parsnip and white bean stew', '2026-10-17', '2026-12-17', 'best', 6, 2000.0, 3, 'celery
', 'soup or stew
', 'refrigerator', 1620);
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes) VALUES
    (2, 1, 2, 'Quince compote', 'quince compote', '2026-10-17', '2027-03-01', 'use by', 4, NULL, 2, '', '', 'refrigerator', NULL);
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes) VALUES
    (3, 2, 1, 'Leek and potato soup', 'leek and potato soup', '2026-10-18', '2027-01-10', 'use by', 4, NULL, 2, 'milk
', '', 'refrigerator', NULL);
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes) VALUES
    (4, 3, 1, 'Parsnip and white bean stew', 'parsnip and white bean stew', '2026-10-17', '2026-12-17', 'best', 5, 2000.0, 3, 'celery
', 'soup or stew
', 'refrigerator', 1620);
INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, servings, grams, bags, allergens, classes, thaw, thaw_minutes) VALUES
    (5, 3, 2, 'Quince and pear compote', 'quince and pear compote', '2026-10-17', '2027-03-01', 'use by', 4, NULL, 2, '', '', 'refrigerator', NULL);
INSERT INTO bag (id, package, number, state, changed) VALUES
    (1, 4, 1, 'eaten', '2026-10-27T07:33:20');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (2, 4, 2, 'frozen', '2026-10-17T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (3, 4, 3, 'frozen', '2026-10-17T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (4, 2, 1, 'frozen', '2026-10-17T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (5, 2, 2, 'frozen', '2026-10-17T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (6, 3, 1, 'out', '2026-10-28T11:20:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (7, 3, 2, 'frozen', '2026-10-18T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (8, 5, 1, 'frozen', '2026-10-19T14:05:00');
INSERT INTO bag (id, package, number, state, changed) VALUES
    (9, 5, 2, 'frozen', '2026-10-19T14:05:00');
INSERT INTO bag_id (id, bag, newest) VALUES
    ('0RR-6X4-87B', 5, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('1HC-ZXW-87W', 4, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('28D-QZC-87G', 3, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('AKM-124-87M', 1, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('F99-KZC-88T', 7, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('FRV-B24-87B', 2, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('T10-WKR-87W', 8, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('WTN-EN8-87K', 9, 1);
INSERT INTO bag_id (id, bag, newest) VALUES
    ('Z59-BW8-881', 6, 1);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (1, '2026-10-17T14:05:00', '2026-10-17T14:05:00', 'labels', 'letter-2x5-4x2in', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
# settings
', 'program 0.1.0
stock letter-2x5-4x2in 75563840a36d3d76
layout wide d7eb2b5cc786cb69
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', 2094864817020794438);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (2, '2026-10-17T14:06:40', '2026-10-17T14:06:40', 'cards', 'letter-cards-6x4in-cut', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
# settings
', 'program 0.1.0
stock letter-cards-6x4in-cut f65a35926f13cd9f
layout cook-day-wide 62d2ada00e4834fb
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', 8726945619946622967);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (3, '2026-10-18T14:05:00', '2026-10-18T14:05:00', 'labels', '/orchard/my-sheet.toml', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 3
spoiled = []
dpi = 300
small_modules = false
# settings
', 'program 0.1.0
stock my-sheet 75563840a36d3d76
layout wide d7eb2b5cc786cb69
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', 9133397675820235064);
INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, hash) VALUES
    (4, '2026-10-19T14:05:00', '2026-10-19T14:05:00', 'labels', 'letter-2x5-4x2in', '', 'paper = "letter"
storage_list = "us"
language = "en"
units = "both"
first_cell = 1
spoiled = []
dpi = 300
small_modules = false
# settings
', 'program 0.1.0
stock letter-2x5-4x2in 75563840a36d3d76
layout wide d7eb2b5cc786cb69
face ClearSans 02235d67c96d7d34
face DejaVuSans adadfef763426946
face ClearSans-Medium a0e57cbea9cd8e5a
face ClearSans-Bold 9f31a5694f34c1cf
face DejaVuSans-Bold 1b3be1b9d0324063
', 2094862617997538016);
INSERT INTO print_day (print, position, day) VALUES
    (1, 1, 1);
INSERT INTO print_day (print, position, day) VALUES
    (2, 1, 1);
INSERT INTO print_day (print, position, day) VALUES
    (3, 1, 2);
INSERT INTO print_day (print, position, day) VALUES
    (4, 1, 3);
INSERT INTO print_file (id, print, name, bytes) VALUES
    (1, 3, '/orchard/my-sheet.toml', CAST('# A stock is what a ruler says about one sheet, from its top left corner; lengths across, then
# down. This file may be copied for a sheet of one''s own: measure, write, name it by its numbers.
about         = "US Letter, 10 labels of 4 x 2 in"
paper         = "letter"                 # or sheet = ["8.5 in", "11 in"]
cell          = ["4 in", "2 in"]         # one label
columns       = 2
rows          = 5
first         = ["5/32 in", "1/2 in"]    # corner of the first label; left out: in the middle
pitch         = ["4 3/16 in", "2 in"]    # from one label''s corner to the next one''s
corner_radius = "1/16 in"
safe_margin   = "3/32 in"                # kept free of ink inside each label; left out: 2 mm
' AS BLOB));
INSERT INTO dish_words (rowid, words) SELECT id, words FROM package;
PRAGMA application_id = 1414021463;
PRAGMA user_version = 2;
COMMIT;
PRAGMA wal_checkpoint(TRUNCATE);
)sql";

} // namespace thawslip::test_support
