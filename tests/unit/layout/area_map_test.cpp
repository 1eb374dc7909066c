#include "layout/files/area_map.h"

#include <doctest/doctest.h>

using thawslip::layout::read_area_map;

TEST_CASE("a picture gives each area its rectangle") {
    const auto picture = read_area_map({"dish  dish  code", "thaw  thaw  code", "cook  .     id"});
    REQUIRE(picture.ok());
    CHECK(picture.value().rows == 3);
    CHECK(picture.value().columns == 3);
    REQUIRE(picture.value().areas.size() == 5);
    const auto& code = picture.value().areas[1];
    CHECK(code.name == "code");
    CHECK(code.grid.row == 0);
    CHECK(code.grid.column == 2);
    CHECK(code.grid.rows == 2);
    CHECK(code.grid.columns == 1);
}

TEST_CASE("an area that is no rectangle is refused at the place that breaks it") {
    const auto picture = read_area_map({"dish dish", "dish code"});
    REQUIRE_FALSE(picture.ok());
    REQUIRE(picture.fault().size() == 1);
    CHECK(picture.fault()[0].line == 1);
    CHECK(picture.fault()[0].offset == 5);
    CHECK(picture.fault()[0].message == "area \"dish\" is no rectangle: \"code\" stands inside it");
}

TEST_CASE("an area in two places is refused") {
    CHECK_FALSE(read_area_map({"dish code dish"}).ok());
    CHECK_FALSE(read_area_map({"dish", "code", "dish"}).ok());
}

TEST_CASE("rows of unlike length are refused with both lengths") {
    const auto picture = read_area_map({"a b c", "a b"});
    REQUIRE_FALSE(picture.ok());
    CHECK(picture.fault()[0].message == "this row has 2 names, the first row has 3");
}

TEST_CASE("a picture without rows or without names is refused") {
    CHECK_FALSE(read_area_map({}).ok());
    CHECK_FALSE(read_area_map({""}).ok());
    CHECK_FALSE(read_area_map({"  "}).ok());
}
