// Who may do what at a server: by the roles, policies and grants of `thawslip archive sql`, asked
// as the program asks, and past it with psql.

#include "archive/server_sql.h"
#include "samples.h"

namespace rights_test {

using namespace thawslip;
using namespace thawslip::test_support;
using Kind = ArchiveFault::Kind;

namespace {

const PackageRecord stew = package("Squash and red lentil stew", 3);

ArchiveFault fault_of_opening(const std::string& address) {
    auto opened = Archive::open(address, Mode::Read, std::chrono::seconds{5});
    REQUIRE_FALSE(opened.ok());
    CAPTURE(opened.fault().message);
    CHECK(opened.fault().message.find("hunter2") == std::string::npos);
    return opened.fault();
}

std::string login_of(const std::string& address) {
    const auto start = address.find("//") + 2;
    return address.substr(start, address.find('@') - start);
}

/// A statement in a session of that login, in its kitchen.
Outcome asked(const std::string& address, const std::string& sql) {
    return required_server().sql("SELECT thawslip.enter('');\n" + sql, login_of(address));
}

} // namespace

TEST_CASE("a reader sees the kitchen and changes nothing of it") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({stew})}));
    const auto address = required_server().address_for(scratch.path, "reader");
    auto archive = opened(address, Mode::Read);
    CHECK(archive.bags(Which::All).size() == 3);
    const auto kind_of = [](const auto& change) {
        try {
            change();
        } catch (const ArchiveFailure& failure) {
            return failure.fault().kind;
        }
        return Kind::Missing;
    };
    CHECK(kind_of([&] { archive.set_state(stew.bags, State::Eaten, "2026-11-01T18:00:00"); }) ==
          Kind::ReadOnly);
    CHECK(kind_of([&] { archive.record(print({day({package("Leek soup", 1)})})); }) ==
          Kind::ReadOnly);
    CHECK(archive.bags(Which::InFreezer).size() == 3);
    for (const std::string sql :
         {"UPDATE thawslip.bag SET state = 'eaten'", "DELETE FROM thawslip.bag_event",
          "INSERT INTO thawslip.sheet (stock, next_cell, skipped, at) VALUES ('a', 1, '', '')",
          "SELECT thawslip.add_kitchen('mine')",
          "SELECT thawslip.add_member('kitchen 1', 'reader_1', 'packer')",
          "SELECT * FROM thawslip.member"}) {
        CAPTURE(sql);
        const auto refused = asked(address, sql);
        CHECK(refused.err.find("permission denied") != std::string::npos);
    }
}

TEST_CASE("a packer never deletes, and changes nothing that was described or happened") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({stew})}));
    const auto before = opened(scratch.path).contents();
    for (const std::string sql :
         {"DELETE FROM thawslip.bag", "DELETE FROM thawslip.print_key",
          "UPDATE thawslip.day SET description = 'x'", "UPDATE thawslip.package SET allergens = ''",
          "UPDATE thawslip.bag_event SET state = 'eaten'", "TRUNCATE thawslip.bag_event",
          "UPDATE thawslip.bag_id SET id = 'x'", "UPDATE thawslip.bag SET of_kitchen = 1",
          "UPDATE thawslip.about SET version = 7", "DROP TABLE thawslip.bag",
          "CREATE TABLE thawslip.mine (a INT)",
          "INSERT INTO thawslip.member VALUES (1, 'x', 'packer')",
          "ALTER TABLE thawslip.bag DISABLE ROW LEVEL SECURITY"}) {
        CAPTURE(sql);
        CHECK(asked(scratch.path, sql).status != 0);
    }
    CHECK(opened(scratch.path).contents() == before);
}

TEST_CASE("another kitchen sees nothing and changes nothing, whatever it is asked") {
    const Scratch here;
    const Scratch there;
    opened(here.path).record(print({day({stew})}));
    // The same ids at once: a kitchen's are its own.
    opened(there.path).record(print({day({stew})}, "2026-10-17T15:00:00"));
    opened(there.path).set_state(stew.bags, State::Eaten, "2026-11-01T18:00:00");
    CHECK(opened(here.path).bags(Which::InFreezer).size() == 3);
    CHECK(opened(there.path).bags(Which::InFreezer).empty());
    const auto mine = asked(there.path, "SELECT count(*) FROM thawslip.bag;\n"
                                        "SELECT count(DISTINCT of_kitchen) FROM thawslip.bag;\n"
                                        "UPDATE thawslip.bag SET state = 'out'");
    CHECK(mine.out.find("3\n1\n") != std::string::npos);
    CHECK(opened(here.path).bags(Which::InFreezer).size() == 3);
    const auto kitchen = here.path.substr(here.path.find("kitchen%20") + 10);
    const auto number = required_server().sql(
        "SELECT id FROM thawslip.kitchen WHERE name = 'kitchen " + kitchen + "'");
    for (const std::string& sql :
         {"INSERT INTO thawslip.sheet VALUES (" + number.out + ", 'a', 1, '', '')",
          "SET thawslip.here = '" + number.out.substr(0, number.out.find('\n')) +
              "';\nINSERT INTO thawslip.sheet (stock, next_cell, skipped, at) VALUES ('a', 1, '', "
              "'')"}) {
        const auto refused = asked(there.path, sql);
        CAPTURE(refused.err);
        CHECK(refused.err.find("row-level security") != std::string::npos);
    }
    const auto strayed =
        asked(there.path, "SET thawslip.here = '" + number.out.substr(0, number.out.find('\n')) +
                              "';\nSELECT count(*) FROM thawslip.bag");
    CHECK(strayed.out.find("\n0\n") != std::string::npos);
    const auto switched = required_server().sql("SELECT thawslip.enter('kitchen " + kitchen +
                                                    "');\nSELECT count(*) FROM thawslip.bag",
                                                login_of(there.path));
    CHECK(switched.out == "\n0\n");
    auto other = here.path;
    other.replace(other.find(login_of(here.path)), login_of(here.path).size(),
                  login_of(there.path));
    CHECK(fault_of_opening(other).kind == Kind::Missing);
}

TEST_CASE("who is a member of two kitchens says which") {
    const Scratch one;
    const Scratch two;
    const auto kitchen = two.path.substr(two.path.find("kitchen%20") + 10);
    REQUIRE(required_server()
                .sql("SELECT thawslip.add_member('kitchen " + kitchen + "', '" +
                     login_of(one.path) + "', 'reader')")
                .status == 0);
    CHECK(fault_of_opening(one.path.substr(0, one.path.find("&kitchen="))).kind == Kind::Missing);
    CHECK(opened(one.path).record(print({day({stew})})).new_bags == 3);
    REQUIRE(required_server()
                .sql("SELECT thawslip.remove_member('kitchen " + kitchen + "', '" +
                     login_of(one.path) + "')")
                .status == 0);
    CHECK(opened(one.path.substr(0, one.path.find("&kitchen="))).bags(Which::All).size() == 3);
}

TEST_CASE("who may do everything, and who is nobody there, is refused in words") {
    const auto place = "@/thawslip?host=" + required_server().socket_folder();
    CHECK(fault_of_opening("postgresql://postgres" + place).kind == Kind::CannotOpen);
    CHECK(fault_of_opening("postgresql://nobody_knows" + place).kind == Kind::CannotOpen);
    required_server().sql("CREATE ROLE stranger LOGIN");
    CHECK(fault_of_opening("postgresql://stranger" + place).kind == Kind::CannotOpen);
    CHECK(fault_of_opening("postgresql://postgres@/postgres?host=" +
                           required_server().socket_folder())
              .kind == Kind::Missing);
    CHECK(fault_of_opening("postgresql://anna@/thawslip?host=/nowhere").kind == Kind::Away);
    CHECK(fault_of_opening("postgresql://anna:hunter2@/thawslip").kind == Kind::CannotOpen);
    CHECK(fault_of_opening("postgresql://anna@/thawslip?no_such_word=1").kind == Kind::CannotOpen);
}

TEST_CASE("what makes a server ready may run again and twice at once, and a later one is refused") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({stew})}));
    const auto before = opened(scratch.path).contents();
    const auto script = scratch.folder / "again.sql";
    write_file(script, server_sql());
    CHECK(required_server().sql("\\i " + script).status == 0);
    CHECK(opened(scratch.path).contents() == before);
    const ScratchFolder folder;
    const auto fresh = [&](const std::string& sql) { return required_server().sql(sql); };
    REQUIRE(fresh("CREATE DATABASE twice").status == 0);
    const auto both = run("cd " + shell_word(required_server().socket_folder()) +
                          " && for n in 1 2; do psql -Xq -h $PWD -U "
                          "postgres -d twice -f " +
                          shell_word(script) +
                          " & done; wait; psql -XAtq -h $PWD -U postgres "
                          "-d twice -c 'SELECT version FROM thawslip.about'");
    CAPTURE(both.err);
    const auto version = required_server().sql("SELECT version FROM thawslip.about").out;
    CHECK(both.out == version);
    CHECK(both.err.empty());
    required_server().sql("UPDATE thawslip.about SET version = 99");
    CHECK(fault_of_opening(scratch.path).kind == Kind::NewerSchema);
    required_server().sql("UPDATE thawslip.about SET version = 0");
    CHECK(fault_of_opening(scratch.path).kind == Kind::Missing);
    required_server().sql("UPDATE thawslip.about SET version = " + version);
    CHECK(opened(scratch.path).contents() == before);
    const ScratchFolder out;
    CHECK_THROWS_AS(opened(scratch.path).back_up(out / "copy.db"), ArchiveFailure);
    CHECK(Archive::back_up(scratch.path, out / "copy.db").has_value());
}

TEST_CASE("a server's schema is this program's, or it is said who leads which forward") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({stew})}));
    const auto set_to = [](const std::string& version) {
        REQUIRE(required_server().sql("UPDATE thawslip.about SET version = " + version).status ==
                0);
    };
    const auto told = required_server().sql("SELECT 'is ' || version FROM thawslip.about").out;
    const auto at = told.find("is ");
    REQUIRE(at != std::string::npos);
    const auto known = std::stoi(told.substr(at + 3));
    const auto is = [&known](int more) { return std::to_string(known + more); };
    set_to(is(1));
    const auto later = fault_of_opening(scratch.path);
    set_to(is(-1));
    const auto older = fault_of_opening(scratch.path);
    set_to(is(0)); // the server is one for all cases
    CHECK(later.kind == Kind::NewerSchema);
    CHECK(later.message.ends_with("was made by a later thawslip: its schema is " + is(1) +
                                  ", this program knows " + is(0) + "; nothing was changed"));
    CHECK(older.kind == Kind::Missing);
    CHECK(older.message.find("is of schema " + is(-1) + ", this program needs " + is(0) + ":") !=
          std::string::npos);
    CHECK(opened(scratch.path, Mode::Read).bags(Which::All).size() == 3);
    // What makes a server ready changes nothing of one that is.
    CHECK(required_server().sql(server_sql()).status == 0);
    CHECK(opened(scratch.path, Mode::Read).bags(Which::All).size() == 3);
}

} // namespace rights_test
