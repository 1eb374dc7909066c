#pragma once

#include "support/command.h"

#include <hb-subset.h>
#include <hb.h>
#include <memory>
#include <string>
#include <string_view>

namespace thawslip::test_support {

/// A file of these bytes, in a folder of this process alone: cases run beside each other.
/// \returns its path
inline std::string face_file(const std::string& name, const std::string& bytes) {
    static const ScratchFolder folder;
    write_file(folder / name, bytes);
    return folder / name;
}

/// A copy of a face file that lacks some characters, as lesser faces do. \returns its path
inline std::string face_file_without(const std::string& path, std::u32string_view characters,
                                     const std::string& name) {
    const std::unique_ptr<hb_blob_t, void (*)(hb_blob_t*)> blob{
        hb_blob_create_from_file(path.c_str()), hb_blob_destroy};
    const std::unique_ptr<hb_face_t, void (*)(hb_face_t*)> whole{hb_face_create(blob.get(), 0),
                                                                 hb_face_destroy};
    const std::unique_ptr<hb_subset_input_t, void (*)(hb_subset_input_t*)> input{
        hb_subset_input_create_or_fail(), hb_subset_input_destroy};
    auto* kept = hb_subset_input_unicode_set(input.get());
    hb_face_collect_unicodes(whole.get(), kept);
    for (const char32_t character : characters) {
        hb_set_del(kept, character);
    }
    const std::unique_ptr<hb_face_t, void (*)(hb_face_t*)> lesser{
        hb_subset_or_fail(whole.get(), input.get()), hb_face_destroy};
    const std::unique_ptr<hb_blob_t, void (*)(hb_blob_t*)> made{
        hb_face_reference_blob(lesser.get()), hb_blob_destroy};
    unsigned length = 0;
    const char* bytes = hb_blob_get_data(made.get(), &length);
    return face_file(name, {bytes, length});
}

} // namespace thawslip::test_support
