#include "archive/tables/schema.h"

#include <array>
#include <fmt/format.h>
#include <string>

namespace thawslip::archive {
namespace {

constexpr std::string_view first_step = R"sql(
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
)sql";

constexpr std::string_view second_step = R"sql(
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
)sql";

constexpr std::string_view third_step = R"sql(
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
)sql";

constexpr std::string_view fourth_step = R"sql(
-- Where bags lie, in the cook's words, as it was described; and by what happened to them.
ALTER TABLE package ADD COLUMN place TEXT NOT NULL DEFAULT '';

-- An event may say a state, a place, or that an earlier command of the same station is undone: then
-- no event of that command counts for the bag. `state` is '' and `place` NULL where nothing is said.
ALTER TABLE bag_event ADD COLUMN place TEXT;
ALTER TABLE bag_event ADD COLUMN joined TEXT NOT NULL DEFAULT ''; -- renamed: an id of what it is
ALTER TABLE bag_event ADD COLUMN undoes INTEGER NOT NULL DEFAULT 0; -- a seq of the station; 0: none

-- More states than before: a check cannot be changed but in a new table (SQLite, "ALTER TABLE",
-- "Making Other Kinds Of Table Schema Changes").
CREATE TABLE bag_of_now (
    id      INTEGER PRIMARY KEY,
    package INTEGER NOT NULL REFERENCES package,
    number  INTEGER NOT NULL,
    state   TEXT NOT NULL CHECK (state IN
                ('frozen', 'out', 'eaten', 'thrown', 'never filled', 'renamed')),
    changed TEXT NOT NULL,                  -- when it came into that state
    joined  TEXT NOT NULL DEFAULT '',       -- renamed: an id of the bag that it is
    place   TEXT                            -- where it was moved to; NULL: never moved
);
INSERT INTO bag_of_now SELECT id, package, number, state, changed, '', NULL FROM bag;
DROP TABLE bag;
ALTER TABLE bag_of_now RENAME TO bag;
CREATE INDEX bag_package ON bag (package, number);
CREATE INDEX bag_frozen ON bag (package) WHERE state = 'frozen';
CREATE INDEX bag_joined ON bag (joined) WHERE joined <> '';

-- Where the last print on a stock stopped. It is about this kitchen's paper, so it is neither
-- exported nor merged.
CREATE TABLE sheet (
    stock     TEXT PRIMARY KEY,             -- its name
    next_cell INTEGER NOT NULL,             -- the first that is free, from 1; 1: the sheet is used up
    skipped   TEXT NOT NULL,                -- cells from there on that cannot be used: "9 10"
    at        TEXT NOT NULL                 -- when it was printed: the kitchen's date and time
) WITHOUT ROWID;
)sql";

constexpr std::string_view fifth_step = R"sql(
-- Which of its dish's sizes a package is (kitchen/bag_id.h, Batch); 0: the dish is in one. With the
-- batch it is what the ids of its bags are made from.
ALTER TABLE package ADD COLUMN size INTEGER NOT NULL DEFAULT 0;
)sql";

constexpr std::string_view sixth_step = R"sql(
-- The server whose archive this file is a station's copy of; no row: it is an archive of its own.
-- About this station alone, so it is neither exported nor merged.
CREATE TABLE link (
    address TEXT PRIMARY KEY,
    asked   TEXT NOT NULL,                  -- when it was last reached: the kitchen's date and time
    tried   INTEGER NOT NULL                -- when that was last tried, seconds since 1970
) WITHOUT ROWID;
)sql";

constexpr std::array<std::string_view, 6> steps_so_far = {first_step,  second_step, third_step,
                                                          fourth_step, fifth_step,  sixth_step};

[[noreturn]] void refuse(ArchiveFault::Kind kind, std::string message) {
    throw ArchiveFailure{{kind, std::move(message)}};
}

} // namespace

std::span<const std::string_view> schema_steps() {
    return steps_so_far;
}

std::size_t schema_version(const Database& database, std::size_t newest) {
    // One statement, so one moment of the file: between several another program may have led the
    // schema forward, and what they tell together would never have been true.
    auto facts = database.prepare(
        "SELECT (SELECT user_version FROM pragma_user_version), (SELECT application_id FROM "
        "pragma_application_id), (SELECT count(*) FROM sqlite_schema), (SELECT encoding FROM "
        "pragma_encoding)");
    facts.next();
    const auto version = facts.integer(0);
    const auto owner = facts.integer(1);
    const bool empty = facts.integer(2) == 0;
    if (empty && version == 0 && (owner == 0 || owner == application_id)) {
        return 0;
    }
    if (owner != application_id) {
        refuse(ArchiveFault::Kind::NotOurs,
               fmt::format("{} is a database, but no archive of thawslip", database.path()));
    }
    if (facts.text(3) != "UTF-8") { // it would say other lengths and other orders than we know
        refuse(ArchiveFault::Kind::NotOurs,
               fmt::format("{} is a database in {}, and no archive as thawslip makes it",
                           database.path(), facts.text(3)));
    }
    if (version <= 0) {
        refuse(ArchiveFault::Kind::Damaged,
               fmt::format("the archive {} is damaged: it says that its schema is {}",
                           database.path(), version));
    }
    if (static_cast<std::size_t>(version) > newest) {
        refuse(ArchiveFault::Kind::NewerSchema,
               fmt::format("the archive {} was written by a later thawslip: its schema is {}, this "
                           "program knows {}; nothing was changed",
                           database.path(), version, newest));
    }
    return static_cast<std::size_t>(version);
}

void migrate(const Database& database, std::span<const std::string_view> steps) {
    if (schema_version(database, steps.size()) == steps.size()) {
        return;
    }
    FileTransaction transaction{database};
    // Another program may have done it while this one waited for the lock.
    for (auto v = schema_version(database, steps.size()); v < steps.size(); ++v) {
        database.run(std::string{steps[v]});
    }
    database.run(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}", application_id,
                             steps.size()));
    transaction.commit();
}

} // namespace thawslip::archive
