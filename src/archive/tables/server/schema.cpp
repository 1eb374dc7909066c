#include "archive/tables/server/schema.h"

#include "archive/server_sql.h"

#include <array>
#include <fmt/format.h>
#include <string_view>

namespace thawslip::archive {
namespace {

// Steps from nothing, as those of a file (archive/tables/schema.cpp): a released step never
// changes. Every key begins with the kitchen, so that kitchens share nothing and ids need only be
// unique in one. Texts are of collation "C": their order is that of their bytes, as in a file. Each
// query is held to one kitchen by a policy whose function is asked once for a query (a scalar
// subquery).
constexpr std::string_view tables = R"sql(
CREATE TABLE thawslip.kitchen (
    id   BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    name TEXT COLLATE "C" NOT NULL UNIQUE CHECK (name <> '')
);
CREATE TABLE thawslip.member (
    of_kitchen BIGINT NOT NULL REFERENCES thawslip.kitchen,
    login      NAME NOT NULL,
    may        TEXT NOT NULL CHECK (may IN ('packer', 'reader')),
    PRIMARY KEY (login, of_kitchen)
);

-- The kitchen of this session, where its login is a member: the one it named, or its only one. In
-- plpgsql, which keeps its plan: these are asked once for each table of each query.
CREATE FUNCTION thawslip.kitchen_here() RETURNS BIGINT LANGUAGE plpgsql STABLE SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    DECLARE named TEXT := coalesce(current_setting('thawslip.kitchen', true), '');
    BEGIN
        RETURN (SELECT min(m.of_kitchen) FROM thawslip.member m JOIN thawslip.kitchen k
            ON k.id = m.of_kitchen WHERE m.login = session_user AND named IN ('', k.name)
            HAVING count(*) = 1);
    END $f$;
CREATE FUNCTION thawslip.kitchen_to_write() RETURNS BIGINT LANGUAGE plpgsql STABLE SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    BEGIN
        RETURN (SELECT m.of_kitchen FROM thawslip.member m WHERE m.login = session_user
            AND m.of_kitchen = thawslip.kitchen_here() AND m.may = 'packer');
    END $f$;
-- Names the session's kitchen; NULL: it is no member of that one.
CREATE FUNCTION thawslip.enter(kitchen TEXT) RETURNS BIGINT LANGUAGE plpgsql SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    DECLARE here BIGINT;
    BEGIN
        PERFORM set_config('thawslip.kitchen', kitchen, false);
        here := thawslip.kitchen_here();
        PERFORM set_config('thawslip.here', coalesce(here, 0)::TEXT, false);
        RETURN here;
    END $f$;
-- Keeps every other writer of the kitchen out until the transaction ends.
CREATE FUNCTION thawslip.lock_kitchen() RETURNS BIGINT LANGUAGE sql SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    SELECT id FROM thawslip.kitchen WHERE id = thawslip.kitchen_to_write() FOR UPDATE $f$;

CREATE TABLE thawslip.day (
    of_kitchen  BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT
                REFERENCES thawslip.kitchen,
    id          BIGINT NOT NULL,
    lineage     BIGINT NOT NULL,
    revision    BIGINT NOT NULL,
    made        TEXT COLLATE "C" NOT NULL,
    kitchen     TEXT COLLATE "C" NOT NULL,
    file        TEXT COLLATE "C" NOT NULL,
    recorded    TEXT COLLATE "C" NOT NULL,
    hash        BIGINT NOT NULL,
    description BYTEA NOT NULL,
    station     TEXT COLLATE "C" NOT NULL,
    ordered     BIGINT NOT NULL,
    PRIMARY KEY (of_kitchen, id),
    UNIQUE (of_kitchen, lineage, revision)
);
CREATE INDEX day_hash ON thawslip.day (of_kitchen, hash);
CREATE INDEX day_file ON thawslip.day (of_kitchen, made, file);

CREATE TABLE thawslip.package (
    of_kitchen     BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    id             BIGINT NOT NULL,
    day            BIGINT NOT NULL,
    position       BIGINT NOT NULL,
    dish           TEXT COLLATE "C" NOT NULL,
    words          TEXT COLLATE "C" NOT NULL,
    made           TEXT COLLATE "C" NOT NULL,
    keep_until     TEXT COLLATE "C" NOT NULL,
    basis          TEXT COLLATE "C" NOT NULL CHECK (basis IN ('use by', 'best')),
    servings       BIGINT NOT NULL,
    grams          DOUBLE PRECISION,
    bags           BIGINT NOT NULL,
    allergens      TEXT COLLATE "C",
    classes        TEXT COLLATE "C",
    thaw           TEXT COLLATE "C",
    thaw_minutes   BIGINT,
    kitchen_number BIGINT NOT NULL,
    batch_kitchen  TEXT COLLATE "C" NOT NULL,
    batch          BIGINT NOT NULL,
    size           BIGINT NOT NULL,
    origin         TEXT COLLATE "C" NOT NULL,
    place          TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (of_kitchen, id),
    UNIQUE (of_kitchen, day, position),
    FOREIGN KEY (of_kitchen, day) REFERENCES thawslip.day
);
CREATE INDEX package_dish ON thawslip.package (of_kitchen, dish, made);

CREATE TABLE thawslip.bag (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    id         BIGINT NOT NULL,
    package    BIGINT NOT NULL,
    number     BIGINT NOT NULL,
    state      TEXT COLLATE "C" NOT NULL CHECK (state IN
                   ('frozen', 'out', 'eaten', 'thrown', 'never filled', 'renamed')),
    changed    TEXT COLLATE "C" NOT NULL,
    joined     TEXT COLLATE "C" NOT NULL DEFAULT '',
    place      TEXT COLLATE "C",
    PRIMARY KEY (of_kitchen, id),
    FOREIGN KEY (of_kitchen, package) REFERENCES thawslip.package
);
CREATE INDEX bag_package ON thawslip.bag (of_kitchen, package, number);
CREATE INDEX bag_frozen ON thawslip.bag (of_kitchen, package) WHERE state = 'frozen';
CREATE INDEX bag_joined ON thawslip.bag (of_kitchen, joined) WHERE joined <> '';

CREATE TABLE thawslip.bag_id (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    id         TEXT COLLATE "C" NOT NULL,
    bag        BIGINT NOT NULL,
    newest     BIGINT NOT NULL,
    PRIMARY KEY (of_kitchen, id),
    FOREIGN KEY (of_kitchen, bag) REFERENCES thawslip.bag
);
CREATE INDEX bag_id_bag ON thawslip.bag_id (of_kitchen, bag);

CREATE TABLE thawslip.bag_event (
    of_kitchen   BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    bag          BIGINT NOT NULL,
    ordered      BIGINT NOT NULL,
    station      TEXT COLLATE "C" NOT NULL,
    seq          BIGINT NOT NULL,
    state        TEXT COLLATE "C" NOT NULL,
    at           TEXT COLLATE "C" NOT NULL,
    clock        BIGINT NOT NULL,
    clock_offset BIGINT NOT NULL,
    boot         TEXT COLLATE "C" NOT NULL,
    uptime       BIGINT NOT NULL,
    place        TEXT COLLATE "C",
    joined       TEXT COLLATE "C" NOT NULL,
    undoes       BIGINT NOT NULL,
    PRIMARY KEY (of_kitchen, bag, ordered, station, seq, state, at),
    FOREIGN KEY (of_kitchen, bag) REFERENCES thawslip.bag
);
CREATE INDEX bag_event_station ON thawslip.bag_event (of_kitchen, station, seq);
CREATE INDEX bag_event_renamed ON thawslip.bag_event (of_kitchen, bag) WHERE state = 'renamed';

CREATE TABLE thawslip.print (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT
               REFERENCES thawslip.kitchen,
    id         BIGINT NOT NULL,
    first_at   TEXT COLLATE "C" NOT NULL,
    last_at    TEXT COLLATE "C" NOT NULL,
    what       TEXT COLLATE "C" NOT NULL,
    stock      TEXT COLLATE "C" NOT NULL,
    layout     TEXT COLLATE "C" NOT NULL,
    settings   TEXT COLLATE "C" NOT NULL,
    look       TEXT COLLATE "C" NOT NULL,
    hash       BIGINT NOT NULL,
    PRIMARY KEY (of_kitchen, id)
);
CREATE INDEX print_hash ON thawslip.print (of_kitchen, hash);
CREATE INDEX print_first ON thawslip.print (of_kitchen, first_at);
CREATE INDEX print_last ON thawslip.print (of_kitchen, last_at);

CREATE TABLE thawslip.print_day (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    print      BIGINT NOT NULL,
    position   BIGINT NOT NULL,
    day        BIGINT NOT NULL,
    PRIMARY KEY (of_kitchen, print, position),
    FOREIGN KEY (of_kitchen, print) REFERENCES thawslip.print,
    FOREIGN KEY (of_kitchen, day) REFERENCES thawslip.day
);
CREATE INDEX print_day_day ON thawslip.print_day (of_kitchen, day, print);

CREATE TABLE thawslip.print_file (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    id         BIGINT NOT NULL,
    print      BIGINT NOT NULL,
    name       TEXT COLLATE "C" NOT NULL,
    bytes      BYTEA NOT NULL,
    PRIMARY KEY (of_kitchen, id),
    UNIQUE (of_kitchen, print, name),
    FOREIGN KEY (of_kitchen, print) REFERENCES thawslip.print
);

CREATE TABLE thawslip.print_key (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT,
    key        TEXT COLLATE "C" NOT NULL,
    print      BIGINT NOT NULL,
    at         TEXT COLLATE "C" NOT NULL,
    station    TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (of_kitchen, key),
    FOREIGN KEY (of_kitchen, print) REFERENCES thawslip.print
);
CREATE INDEX print_key_print ON thawslip.print_key (of_kitchen, print);
CREATE INDEX print_key_station ON thawslip.print_key (of_kitchen, station);

CREATE TABLE thawslip.sheet (
    of_kitchen BIGINT NOT NULL DEFAULT current_setting('thawslip.here')::BIGINT
               REFERENCES thawslip.kitchen,
    stock      TEXT COLLATE "C" NOT NULL,
    next_cell  BIGINT NOT NULL,
    skipped    TEXT COLLATE "C" NOT NULL,
    at         TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (of_kitchen, stock)
);
)sql";

// What readers and packers may: nobody deletes, and what was described or happened never changes.
constexpr std::string_view rights = R"sql(
GRANT USAGE ON SCHEMA thawslip TO thawslip_reader, thawslip_packer;
GRANT SELECT ON thawslip.about TO thawslip_reader, thawslip_packer;
REVOKE ALL ON ALL FUNCTIONS IN SCHEMA thawslip FROM PUBLIC;
GRANT EXECUTE ON FUNCTION thawslip.kitchen_here(), thawslip.kitchen_to_write(),
    thawslip.enter(TEXT), thawslip.lock_kitchen() TO thawslip_reader, thawslip_packer;
GRANT UPDATE (revision) ON thawslip.day TO thawslip_packer;
GRANT UPDATE (package, number, state, changed, joined, place) ON thawslip.bag TO thawslip_packer;
GRANT UPDATE (newest) ON thawslip.bag_id TO thawslip_packer;
GRANT UPDATE (first_at, last_at) ON thawslip.print TO thawslip_packer;
GRANT UPDATE (next_cell, skipped, at) ON thawslip.sheet TO thawslip_packer;
DECLARE name TEXT;
    BEGIN
        FOREACH name IN ARRAY ARRAY['day', 'package', 'bag', 'bag_id', 'bag_event', 'print',
                                    'print_day', 'print_file', 'print_key', 'sheet'] LOOP
            EXECUTE format('ALTER TABLE thawslip.%I ENABLE ROW LEVEL SECURITY', name);
            EXECUTE format('GRANT SELECT ON thawslip.%I TO thawslip_reader, thawslip_packer', name);
            EXECUTE format('GRANT INSERT ON thawslip.%I TO thawslip_packer', name);
            EXECUTE format('CREATE POLICY seen ON thawslip.%I FOR SELECT USING '
                '(of_kitchen = (SELECT thawslip.kitchen_here()))', name);
            EXECUTE format('CREATE POLICY added ON thawslip.%I FOR INSERT WITH CHECK '
                '(of_kitchen = (SELECT thawslip.kitchen_to_write()))', name);
            EXECUTE format('CREATE POLICY changed ON thawslip.%I FOR UPDATE USING '
                '(of_kitchen = (SELECT thawslip.kitchen_to_write()))', name);
        END LOOP;
    END;
)sql";

// For whoever keeps the server.
constexpr std::string_view keeping = R"sql(
CREATE FUNCTION thawslip.add_kitchen(name TEXT) RETURNS BIGINT LANGUAGE sql
    SET search_path = pg_catalog, pg_temp AS $f$
    INSERT INTO thawslip.kitchen (name) VALUES (add_kitchen.name) RETURNING id $f$;
CREATE FUNCTION thawslip.add_member(kitchen TEXT, login NAME, may TEXT) RETURNS VOID
    LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $f$
    DECLARE chosen BIGINT;
    BEGIN
        IF add_member.may IS NULL OR add_member.may NOT IN ('packer', 'reader') THEN
            RAISE 'a member is a "packer" or a "reader", not "%"', add_member.may;
        END IF;
        SELECT k.id INTO chosen FROM thawslip.kitchen k WHERE k.name = add_member.kitchen;
        IF chosen IS NULL THEN
            RAISE 'there is no kitchen "%"', add_member.kitchen;
        END IF;
        EXECUTE format('GRANT %I TO %I', 'thawslip_' || add_member.may, add_member.login);
        INSERT INTO thawslip.member VALUES (chosen, add_member.login, add_member.may)
            ON CONFLICT ON CONSTRAINT member_pkey DO UPDATE SET may = excluded.may;
    END $f$;
CREATE FUNCTION thawslip.remove_member(kitchen TEXT, login NAME) RETURNS VOID LANGUAGE sql
    SET search_path = pg_catalog, pg_temp AS $f$
    DELETE FROM thawslip.member m USING thawslip.kitchen k WHERE k.id = m.of_kitchen
        AND k.name = remove_member.kitchen AND m.login = remove_member.login $f$;
REVOKE ALL ON FUNCTION thawslip.add_kitchen(TEXT), thawslip.add_member(TEXT, NAME, TEXT),
    thawslip.remove_member(TEXT, NAME) FROM PUBLIC;
)sql";

// Whoever listens at a kitchen's channel hears that something was added to what stations exchange
// (archive/part_missing.cpp), by whomever, and nothing of what: to ask again is under the policies,
// LISTEN and NOTIFY are not. So the channel has a name that only members are given: others can
// neither see when a kitchen is at work nor call its stations. Events, days and keys of prints are
// never changed, so what adds nothing calls nobody, and two stations cannot call each other for
// ever. The first row of a transaction calls; for the others that is only looked up.
constexpr std::string_view hints = R"sql(
ALTER TABLE thawslip.kitchen ADD COLUMN channel TEXT COLLATE "C" NOT NULL UNIQUE
    DEFAULT 'thawslip_' || replace(gen_random_uuid()::TEXT, '-', '');
CREATE FUNCTION thawslip.channel_here() RETURNS TEXT LANGUAGE sql STABLE SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    SELECT channel FROM thawslip.kitchen WHERE id = thawslip.kitchen_here() $f$;
CREATE FUNCTION thawslip.hint() RETURNS TRIGGER LANGUAGE plpgsql SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    BEGIN
        IF coalesce(current_setting('thawslip.hinted', true), '') <> 'yes' THEN
            PERFORM pg_notify(channel, ''), set_config('thawslip.hinted', 'yes', true)
                FROM thawslip.kitchen WHERE id = NEW.of_kitchen;
        END IF;
        RETURN NULL;
    END $f$;
REVOKE ALL ON FUNCTION thawslip.channel_here(), thawslip.hint() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION thawslip.channel_here() TO thawslip_reader, thawslip_packer;
DECLARE name TEXT;
    BEGIN
        FOREACH name IN ARRAY ARRAY['bag_event', 'day', 'print_key'] LOOP
            EXECUTE format('CREATE TRIGGER hinted AFTER INSERT ON thawslip.%I FOR EACH ROW WHEN '
                '(coalesce(current_setting(''thawslip.hinted'', true), '''') <> ''yes'') '
                'EXECUTE FUNCTION thawslip.hint()', name);
        END LOOP;
    END;
)sql";

// The policies ask for the kitchen once for each table of each query: what a session has entered is
// only checked there, by one look at an index, whatever it made of its settings.
constexpr std::string_view sooner = R"sql(
CREATE FUNCTION thawslip.kitchen_named() RETURNS BIGINT LANGUAGE plpgsql STABLE SECURITY DEFINER
    SET search_path = pg_catalog, pg_temp AS $f$
    DECLARE named TEXT := coalesce(current_setting('thawslip.kitchen', true), '');
    BEGIN
        RETURN (SELECT min(m.of_kitchen) FROM thawslip.member m JOIN thawslip.kitchen k
            ON k.id = m.of_kitchen WHERE m.login = session_user AND named IN ('', k.name)
            HAVING count(*) = 1);
    END $f$;
REVOKE ALL ON FUNCTION thawslip.kitchen_named() FROM PUBLIC;
CREATE OR REPLACE FUNCTION thawslip.kitchen_here() RETURNS BIGINT LANGUAGE plpgsql STABLE
    SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $f$
    DECLARE entered TEXT := coalesce(current_setting('thawslip.here', true), '');
    BEGIN
        IF entered = '' THEN
            RETURN thawslip.kitchen_named();
        END IF;
        RETURN (SELECT m.of_kitchen FROM thawslip.member m WHERE m.login = session_user
            AND m.of_kitchen = entered::BIGINT);
    END $f$;
CREATE OR REPLACE FUNCTION thawslip.enter(kitchen TEXT) RETURNS BIGINT LANGUAGE plpgsql
    SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $f$
    DECLARE here BIGINT;
    BEGIN
        PERFORM set_config('thawslip.kitchen', kitchen, false);
        here := thawslip.kitchen_named();
        PERFORM set_config('thawslip.here', coalesce(here, 0)::TEXT, false);
        RETURN here;
    END $f$;
)sql";

constexpr std::array<std::array<std::string_view, 3>, 2> steps = {
    {{tables, rights, keeping}, {hints, sooner}}};

constexpr std::string_view beginning =
    R"sql(-- Thawslip's archive on PostgreSQL: roles, tables, rights. To be run by a superuser in the
-- database that shall hold it; running it again changes nothing.
\set ON_ERROR_STOP on
BEGIN;
SET LOCAL client_min_messages = warning;
DO $roles$
    DECLARE name TEXT;
    BEGIN
        PERFORM pg_advisory_xact_lock(1413304663); -- "THAW": who else runs this waits
        FOREACH name IN ARRAY ARRAY['thawslip_owner', 'thawslip_packer', 'thawslip_reader'] LOOP
            IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = name) THEN
                EXECUTE format('CREATE ROLE %I NOLOGIN', name);
            END IF;
        END LOOP;
    END $roles$;
CREATE SCHEMA IF NOT EXISTS thawslip AUTHORIZATION thawslip_owner;
SET LOCAL ROLE thawslip_owner;
CREATE TABLE IF NOT EXISTS thawslip.about (version BIGINT NOT NULL);
INSERT INTO thawslip.about SELECT 0 WHERE NOT EXISTS (SELECT FROM thawslip.about);
)sql";

} // namespace

std::int64_t server_schema() {
    return steps.size();
}

std::string server_sql() {
    std::string sql{beginning};
    for (std::size_t i = 0; i < steps.size(); ++i) {
        sql +=
            fmt::format("DO $step$ BEGIN IF (SELECT version FROM thawslip.about) = {} THEN\n", i);
        for (const auto part : steps[i]) {
            sql += part;
        }
        sql += fmt::format("UPDATE thawslip.about SET version = {};\nEND IF; END $step$;\n", i + 1);
    }
    return sql + "COMMIT;\n";
}

} // namespace thawslip::archive
