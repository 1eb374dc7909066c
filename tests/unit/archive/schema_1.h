#pragma once

#include <string_view>

namespace thawslip::test_support {

/// An archive as the first released schema had it: two revisions of one description whose dish was
/// renamed, one bag eaten, one out; two prints. Text for the sqlite3 shell; it never changes.
inline constexpr std::string_view schema_1_archive = R"sql(
PRAGMA journal_mode = WAL;
BEGIN;
CREATE TABLE day (
    id          INTEGER PRIMARY KEY,
    lineage     INTEGER NOT NULL,
    revision    INTEGER NOT NULL,
    made        TEXT NOT NULL,
    kitchen     TEXT NOT NULL,
    file        TEXT NOT NULL,
    recorded    TEXT NOT NULL,
    hash        INTEGER NOT NULL,
    description BLOB NOT NULL,
    UNIQUE (lineage, revision)
);
CREATE INDEX day_hash ON day (hash);
CREATE INDEX day_file ON day (file, made);
CREATE TABLE package (
    id         INTEGER PRIMARY KEY,
    day        INTEGER NOT NULL REFERENCES day,
    position   INTEGER NOT NULL,
    dish       TEXT NOT NULL,
    words      TEXT NOT NULL,
    made       TEXT NOT NULL,
    keep_until TEXT NOT NULL,
    basis      TEXT NOT NULL CHECK (basis IN ('use by', 'best')),
    servings   INTEGER NOT NULL,
    grams      REAL,
    bags       INTEGER NOT NULL,
    UNIQUE (day, position)
);
CREATE TABLE bag (
    id      INTEGER PRIMARY KEY,
    package INTEGER NOT NULL REFERENCES package,
    number  INTEGER NOT NULL,
    state   TEXT NOT NULL CHECK (state IN ('frozen', 'out', 'eaten', 'thrown')),
    changed TEXT NOT NULL
);
CREATE INDEX bag_package ON bag (package, number);
CREATE INDEX bag_frozen ON bag (package) WHERE state = 'frozen';
CREATE TABLE bag_id (
    id     TEXT PRIMARY KEY,
    bag    INTEGER NOT NULL REFERENCES bag,
    newest INTEGER NOT NULL
) WITHOUT ROWID;
CREATE INDEX bag_id_bag ON bag_id (bag);
CREATE TABLE print (
    id       INTEGER PRIMARY KEY,
    first_at TEXT NOT NULL,
    last_at  TEXT NOT NULL,
    what     TEXT NOT NULL,
    stock    TEXT NOT NULL,
    layout   TEXT NOT NULL,
    settings TEXT NOT NULL,
    look     TEXT NOT NULL,
    hash     INTEGER NOT NULL
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
CREATE VIRTUAL TABLE dish_words USING fts5 (
    words, content = 'package', content_rowid = 'id', prefix = '2 3',
    tokenize = 'unicode61 remove_diacritics 0'
);
INSERT INTO day VALUES (1, 1, 1, '2026-10-17', 'Orchard house', '/orchard/saturday.toml',
    '2026-10-17T14:05:00', 1, CAST('# first' AS BLOB));
INSERT INTO day VALUES (2, 1, 2, '2026-10-17', 'Orchard house', '/orchard/saturday.toml',
    '2026-10-18T09:00:00', 2, CAST('# second' AS BLOB));
INSERT INTO package VALUES (1, 1, 1, 'Squahs stew', 'squahs stew', '2026-10-17', '2027-01-17',
    'best', 6, 2200.0, 2);
INSERT INTO package VALUES (2, 2, 1, 'Squash stew', 'squash stew', '2026-10-17', '2027-01-17',
    'best', 6, 2200.0, 2);
INSERT INTO dish_words (rowid, words) VALUES (1, 'squahs stew'), (2, 'squash stew');
INSERT INTO bag VALUES (1, 2, 1, 'eaten', '2026-11-01T18:00:00');
INSERT INTO bag VALUES (2, 2, 2, 'out', '2026-11-02T08:00:00');
INSERT INTO bag_id VALUES ('935-4W4-870', 1, 0), ('SW3-HY0-87T', 1, 1), ('H64-SVR-873', 2, 0), ('8CG-A24-87B', 2, 1);
INSERT INTO print VALUES (1, '2026-10-17T14:05:00', '2026-10-17T14:05:00', 'labels',
    'letter-2x5-4x2in', '', 'first_cell = 1', 'face 1', 11);
INSERT INTO print VALUES (2, '2026-10-18T09:00:00', '2026-10-19T09:00:00', 'cards',
    '/orchard/my.toml', '', 'first_cell = 1', 'face 1', 12);
INSERT INTO print_day VALUES (1, 1, 1), (2, 1, 2);
PRAGMA application_id = 1414021463;
PRAGMA user_version = 1;
COMMIT;
PRAGMA wal_checkpoint(TRUNCATE);
)sql";

} // namespace thawslip::test_support
