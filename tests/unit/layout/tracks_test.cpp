#include "layout/track_text.h"
#include "layout/tracks.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

std::vector<Track> tracks(std::initializer_list<const char*> texts) {
    std::vector<Track> all;
    for (const char* text : texts) {
        const auto track = parse_track(text);
        REQUIRE(track.ok());
        all.push_back(track.value());
    }
    return all;
}

bool same(Length a, Length b) {
    return std::abs((a - b).in_points()) < 1e-9;
}

} // namespace

TEST_CASE("a track is written as content, share, percent or length") {
    CHECK(parse_track("content").value().kind == Track::Kind::Content);
    CHECK(parse_track("share").value().amount == doctest::Approx(1.0));
    CHECK(parse_track("share 2.5").value().amount == doctest::Approx(2.5));
    CHECK(parse_track(" 30 % ").value().amount == doctest::Approx(30.0));
    CHECK(same(parse_track("12 mm").value().length, 12_mm));
    for (const char* wrong : {"", "contents", "share x", "-3 mm", "0 %", "101 %", "share 0",
                              "nan %", "inf %", "30", "1e3 %"}) {
        CAPTURE(wrong);
        CHECK_FALSE(parse_track(wrong).ok());
    }
}

TEST_CASE("columns: fixed and percent first, shares divide what is left") {
    const auto columns =
        resolve_columns(tracks({"20 mm", "25 %", "share 1", "share 3"}), 2_mm, 100_mm, {});
    CHECK(same(columns.length[0], 20_mm));
    CHECK(same(columns.length[1], 25_mm));
    // 100 - 20 - 25 - 3 gaps of 2 = 49 mm in four shares.
    CHECK(same(columns.length[2], Length::millimetres(49.0 / 4)));
    CHECK(same(columns.length[3], Length::millimetres(49.0 * 3 / 4)));
    CHECK(same(columns.span(0, 4), 100_mm));
}

TEST_CASE("columns that ask for more than there is overflow") {
    const auto columns = resolve_columns(tracks({"60 mm", "60 mm"}), 2_mm, 100_mm, {});
    CHECK(same(columns.overflow, 22_mm));
}

TEST_CASE("what begins in an empty row begins behind a rule that stands in its gap") {
    // A code in the last two rows, of which the first is empty; below the row above them a rule.
    const RowGap gap{2_mm, 2_mm, {}, {}, {false, true, false}};
    const auto rows = resolve_rows(tracks({"content", "content", "content"}), gap, 100_mm,
                                   {{0, 1, 10_mm}, {2, 1, 8_mm}, {1, 2, 30_mm}});
    CHECK(same(rows.start_of(1), 12_mm));
    CHECK(same(rows.span(1, 2), 30_mm));
    CHECK(same(rows.span(0, 2), 10_mm)); // what ends in it ends before the gap
    CHECK(same(rows.gap_before(1), 2_mm));
    CHECK(same(rows.overflow, Length::millimetres(42 - 100)));
}

TEST_CASE("an empty content row takes no room, and no gap either") {
    const auto rows = resolve_rows(tracks({"content", "content", "content"}), {2_mm, 4_mm}, 100_mm,
                                   {{0, 1, 10_mm}, {2, 1, 10_mm}});
    CHECK(same(rows.length[1], 0_mm));
    // The spare room at most doubles the one gap that is left.
    CHECK(same(rows.start[2], 14_mm));
    CHECK(same(rows.overflow, -78_mm));
}

TEST_CASE("rows under a tall neighbour grow evenly") {
    const auto rows = resolve_rows(tracks({"content", "content"}), {2_mm, 4_mm}, 32_mm,
                                   {{0, 1, 8_mm}, {1, 1, 12_mm}, {0, 2, 32_mm}});
    CHECK(same(rows.length[0], 13_mm));
    CHECK(same(rows.length[1], 17_mm));
    CHECK(same(rows.span(0, 2), 32_mm));
}

TEST_CASE("what is to spare doubles the gaps at most, and share rows take the rest") {
    const auto rows = resolve_rows(tracks({"content", "share", "content"}), {2_mm, 4_mm}, 100_mm,
                                   {{0, 1, 10_mm}, {1, 1, 5_mm}, {2, 1, 10_mm}});
    CHECK(same(rows.length[0], 10_mm));
    CHECK(same(rows.start[1], 14_mm));
    CHECK(same(rows.length[1], 72_mm));
    CHECK(same(rows.start[2] + rows.length[2], 100_mm));
}

TEST_CASE("a tall neighbour makes share rows grow before content rows") {
    const auto rows = resolve_rows(tracks({"content", "share"}), {2_mm, 4_mm}, 32_mm,
                                   {{0, 1, 8_mm}, {1, 1, 12_mm}, {0, 2, 32_mm}});
    CHECK(same(rows.length[0], 8_mm));
    CHECK(same(rows.length[1], 22_mm));
}

TEST_CASE("a fixed row too low for its content overflows by what is lacking") {
    const auto rows =
        resolve_rows(tracks({"5 mm", "content"}), {1_mm, 2_mm}, 100_mm, {{0, 1, 8_mm}});
    CHECK(same(rows.overflow, 3_mm));
}

TEST_CASE("a share row that nothing stands in takes what is to spare, and no more") {
    const auto rows = resolve_rows(tracks({"content", "share", "content"}), {2_mm, 4_mm}, 100_mm,
                                   {{0, 1, 10_mm}, {2, 1, 10_mm}});
    CHECK(same(rows.start[2] + rows.length[2], 100_mm));
    CHECK(same(rows.overflow, -76_mm));
}

TEST_CASE("gaps between rows grow no further than they may") {
    const auto tracks_of = tracks({"content", "content", "share"});
    const std::vector<SpanNeed> needs{{0, 1, 10_mm}, {1, 1, 10_mm}, {2, 1, 10_mm}};
    const auto fixed = resolve_rows(tracks_of, {2_mm, 2_mm}, 100_mm, needs);
    CHECK(fixed.start_of(1).in_millimetres() == doctest::Approx(12.0));
    CHECK(fixed.span(2, 1).in_millimetres() == doctest::Approx(76.0));
    const auto wide = resolve_rows(tracks_of, {2_mm, 5_mm}, 100_mm, needs);
    CHECK(wide.start_of(1).in_millimetres() == doctest::Approx(15.0));
    CHECK(wide.span(2, 1).in_millimetres() == doctest::Approx(70.0));
}

TEST_CASE("a column that nothing needs takes no gap along") {
    const auto columns = resolve_columns(tracks({"share", "content"}), 6_mm, 100_mm, {});
    CHECK(columns.span(0, 1).in_millimetres() == doctest::Approx(100.0));
    CHECK(columns.span(0, 2).in_millimetres() == doctest::Approx(100.0));
    const auto with_both =
        resolve_columns(tracks({"share", "content"}), 6_mm, 100_mm, {{1, 1, 20_mm}});
    CHECK(with_both.span(0, 1).in_millimetres() == doctest::Approx(74.0));
    CHECK(with_both.span(0, 2).in_millimetres() == doctest::Approx(100.0));
}

TEST_CASE(
    "columns with a share fill the room exactly, or lack what they are too long and a point") {
    for (int room = 10; room <= 200; room += 5) {
        CAPTURE(room);
        const auto filled = resolve_columns(tracks({"60 mm", "share", "20 mm"}), 2_mm,
                                            Length::millimetres(room), {});
        const bool fits = room > 84; // 60 and 20 mm, and two gaps of 2 mm
        CHECK(same(filled.overflow,
                   fits ? Length{} : Length::millimetres(84 - room) + Length::points(1)));
        const auto bare =
            resolve_columns(tracks({"60 mm", "20 mm"}), 2_mm, Length::millimetres(room), {});
        CHECK(same(bare.overflow, Length::millimetres(82 - room))); // below 0: to spare
    }
}

TEST_CASE("what is to spare goes into the gaps that grow, and into no others") {
    const std::vector<Track> rows(3); // follow their content
    const std::vector<SpanNeed> needs = {{0, 1, 10_mm}, {1, 1, 10_mm}, {2, 1, 10_mm}};
    const auto bands = resolve_rows(rows, {1_mm, 5_mm, {false, false, true}}, 40_mm, needs);
    CHECK(bands.gap_before(1).in_millimetres() == doctest::Approx(1.0));
    CHECK(bands.gap_before(2).in_millimetres() == doctest::Approx(5.0));
    const auto all = resolve_rows(rows, {1_mm, 5_mm}, 40_mm, needs);
    CHECK(all.gap_before(1).in_millimetres() == doctest::Approx(5.0));
    // Where the row below is not there, the gap stands before the next.
    const auto two = resolve_rows(rows, {1_mm, 5_mm, {false, true, false}}, 40_mm,
                                  {{0, 1, 10_mm}, {2, 1, 10_mm}});
    CHECK(two.start_of(2).in_millimetres() == doctest::Approx(15.0));
}

TEST_CASE("a gap with a rule has the rule's distance, also where the row below is not there") {
    const std::vector<Track> rows(3);
    const RowGap gap{1_mm, 1_mm, {}, {Length{}, 3_mm, Length{}}};
    const auto all = resolve_rows(rows, gap, 40_mm, {{0, 1, 10_mm}, {1, 1, 10_mm}, {2, 1, 10_mm}});
    CHECK(all.gap_before(1).in_millimetres() == doctest::Approx(3.0));
    CHECK(all.gap_before(2).in_millimetres() == doctest::Approx(1.0));
    const auto two = resolve_rows(rows, gap, 40_mm, {{0, 1, 10_mm}, {2, 1, 10_mm}});
    CHECK(two.start_of(2).in_millimetres() == doctest::Approx(13.0));
}
