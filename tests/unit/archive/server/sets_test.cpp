// Many rows by one statement: what is sent to a server, and that nothing else of it changes.

#include "archive/tables/server/sets.h"

#include <doctest/doctest.h>

using namespace thawslip::archive;

namespace {

const std::string bag_row = "INSERT INTO bag (id, package) VALUES ($1, $2)";
const std::string day_row = "INSERT INTO day (id, made) VALUES ($1, $2) ON CONFLICT DO NOTHING";

Posted row(const std::string& sql, Parameter first, Parameter second) {
    return {sql, {std::move(first), std::move(second)}};
}

Posted numbered(const std::string& sql, std::int64_t first, std::int64_t second) {
    return row(sql, first, second);
}

const Array& array_at(const Posted& posted, std::size_t parameter) {
    return std::get<Array>(posted.parameters.at(parameter));
}

} // namespace

TEST_CASE("rows of one table that follow each other are one statement, what it refers to first") {
    const auto sent =
        in_sets({numbered(bag_row, 1, 7), row(day_row, std::int64_t{7}, "2026-10-17"),
                 numbered(bag_row, 2, 7), row(day_row, std::int64_t{8}, "a \"b\" \\")});
    REQUIRE(sent.size() == 2);
    CHECK(sent[0].sql == "INSERT INTO day (id, made) SELECT r0, r1 FROM unnest($1::BIGINT[], "
                         "$2::TEXT[]) AS of_rows (r0, r1) ON CONFLICT DO NOTHING");
    CHECK(array_at(sent[0], 0).written == "{7,8}");
    CHECK(array_at(sent[0], 1).written == R"({"2026-10-17","a \"b\" \\"})");
    CHECK(sent[1].sql == "INSERT INTO bag (id, package) SELECT r0, r1 FROM unnest($1::BIGINT[], "
                         "$2::BIGINT[]) AS of_rows (r0, r1)");
    CHECK(array_at(sent[1], 0).written == "{1,2}");
}

TEST_CASE("a single row, rows of other types and what is no such insert are sent as they are") {
    const auto passed = [](std::vector<Posted> posted) {
        const auto sent = in_sets(posted);
        REQUIRE(sent.size() == posted.size());
        for (std::size_t i = 0; i < sent.size(); ++i) {
            CHECK(sent[i].sql == posted[i].sql);
            CHECK(sent[i].parameters == posted[i].parameters);
        }
    };
    passed({numbered(bag_row, 1, 7)});
    passed({numbered(bag_row, 1, 7), row(bag_row, std::int64_t{2}, "seven")});
    passed({row(bag_row, {}, {}), row(bag_row, {}, {})});
    const std::string update = "UPDATE bag SET package = $2 WHERE id = $1";
    passed({numbered(update, 1, 7), numbered(update, 2, 7)});
    const std::string unknown = "INSERT INTO somewhere (a, b) VALUES ($1, $2)";
    passed({numbered(unknown, 1, 7), numbered(unknown, 2, 7)});
    const std::string returning = bag_row + " RETURNING id";
    passed({numbered(returning, 1, 7), numbered(returning, 2, 7)});
    // What stands between two rows is not overtaken by the second.
    passed({numbered(bag_row, 1, 7), numbered(update, 1, 8), numbered(bag_row, 2, 7)});
}

TEST_CASE(
    "a value that is nothing stays nothing, also where all of them are, and bytes are bytes") {
    const auto sent = in_sets({row(bag_row, {}, Bytes{{'\x01', '\xFF'}}), row(bag_row, {}, {})});
    REQUIRE(sent.size() == 1);
    CHECK(sent[0].sql ==
          "INSERT INTO bag (id, package) SELECT NULL, r1 FROM unnest($1::BYTEA[]) AS "
          "of_rows (r1)");
    CHECK(array_at(sent[0], 0).written == R"({"\\x01ff",NULL})");
}

TEST_CASE("a thousand rows are sent at once, and what is more with the next") {
    std::vector<Posted> many;
    for (std::int64_t i = 0; i < 1001; ++i) {
        many.push_back(numbered(bag_row, i, 7));
    }
    const auto sent = in_sets(std::move(many));
    REQUIRE(sent.size() == 2);
    CHECK(array_at(sent[0], 0).written.ends_with(",999}"));
    CHECK(sent[1].sql == bag_row);
    CHECK(sent[1].parameters.front() == Parameter{std::int64_t{1000}});
}
