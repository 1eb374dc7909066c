#include "typeset/face.h"
#include "typeset/face_data.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <hb-subset.h>

namespace thawslip::typeset {
namespace {

using Input = HbHandle<hb_subset_input_t, hb_subset_input_destroy>;
using Plan = HbHandle<hb_subset_plan_t, hb_subset_plan_destroy>;
using Tables = std::vector<hb_tag_t>;

Tables tables_of(hb_face_t* face) {
    auto count = hb_face_get_table_tags(face, 0, nullptr, nullptr);
    Tables tags(count);
    hb_face_get_table_tags(face, 0, &count, tags.data());
    return tags;
}

/// What draws glyphs by number; all other tables name, map, hint or shape them.
bool is_drawn_with(hb_tag_t tag) {
    constexpr std::array kept{HB_TAG('h', 'e', 'a', 'd'), HB_TAG('h', 'h', 'e', 'a'),
                              HB_TAG('h', 'm', 't', 'x'), HB_TAG('m', 'a', 'x', 'p'),
                              HB_TAG('l', 'o', 'c', 'a'), HB_TAG('g', 'l', 'y', 'f')};
    return std::find(kept.begin(), kept.end(), tag) != kept.end();
}

Input describe(hb_face_t* face, std::span<const std::uint32_t> glyphs) {
    Input input{hb_subset_input_create_or_fail()};
    if (!input) {
        return input;
    }
    hb_subset_input_set_flags(input.get(),
                              HB_SUBSET_FLAGS_NO_HINTING | HB_SUBSET_FLAGS_NOTDEF_OUTLINE);
    auto* wanted = hb_subset_input_glyph_set(input.get());
    std::for_each(glyphs.begin(), glyphs.end(), [wanted](auto id) { hb_set_add(wanted, id); });
    auto* dropped = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
    hb_set_clear(dropped);
    for (const auto tag : tables_of(face)) {
        if (!is_drawn_with(tag)) {
            hb_set_add(dropped, tag);
        }
    }
    return input;
}

std::string bytes_of(hb_face_t* face) {
    const HbHandle<hb_blob_t, hb_blob_destroy> blob{hb_face_reference_blob(face)};
    unsigned length = 0;
    const char* bytes = hb_blob_get_data(blob.get(), &length);
    return {bytes, length};
}

} // namespace

Result<Subset, std::string> Face::subset(std::span<const std::uint32_t> glyphs) const {
    auto* face = data_->face.get();
    const auto count = hb_face_get_glyph_count(face);
    const auto absent = std::find_if(glyphs.begin(), glyphs.end(),
                                     [count](std::uint32_t glyph) { return glyph >= count; });
    if (absent != glyphs.end()) {
        return Failure{fmt::format("{}: has no glyph {}, only {}", path(), *absent, count)};
    }
    const auto input = describe(face, glyphs);
    const Plan plan{input ? hb_subset_plan_create_or_fail(face, input.get()) : nullptr};
    const HbHandle<hb_face_t, hb_face_destroy> made{
        plan ? hb_subset_plan_execute_or_fail(plan.get()) : nullptr};
    if (!made) {
        return Failure{path() + ": cannot be cut down to the glyphs used; the file may be damaged"};
    }
    Subset subset{bytes_of(made.get()), {}};
    const auto* numbers = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
    std::transform(glyphs.begin(), glyphs.end(), std::back_inserter(subset.new_ids),
                   [numbers](std::uint32_t glyph) { return hb_map_get(numbers, glyph); });
    return subset;
}

} // namespace thawslip::typeset
