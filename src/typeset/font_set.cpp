#include "typeset/font_set.h"

#include <algorithm>
#include <cassert>

namespace thawslip::typeset {
namespace {

/// The place of the face from `path` in `set`, which is given the face when it lacks it.
Result<FaceId, std::string> place_of(const std::string& path, FontSet& set) {
    const auto known = std::find_if(set.faces.begin(), set.faces.end(),
                                    [&path](const Face& face) { return face.path() == path; });
    if (known != set.faces.end()) {
        return static_cast<FaceId>(known - set.faces.begin());
    }
    auto loaded = Face::load(path);
    if (!loaded) {
        return Failure{loaded.fault()};
    }
    set.faces.push_back(std::move(loaded).value());
    return static_cast<FaceId>(set.faces.size() - 1);
}

} // namespace

const std::vector<FaceId>& FontSet::chain(Weight weight) const {
    switch (weight) {
    case Weight::Regular: return regular;
    case Weight::Medium: return medium;
    case Weight::Bold: return bold;
    }
    return regular;
}

const FaceMetrics& FontSet::metrics(Weight weight) const {
    assert(!chain(weight).empty() && "a font set has a face for every weight");
    return faces[chain(weight).front()].metrics();
}

Result<FontSet, std::string> make_font_set(const FontFiles& files) {
    FontSet set;
    struct Chain {
        const char* name;
        const std::vector<std::string>& paths;
        std::vector<FaceId>& ids;
    };
    for (const auto& chain :
         {Chain{"regular", files.regular, set.regular}, Chain{"medium", files.medium, set.medium},
          Chain{"bold", files.bold, set.bold}}) {
        if (chain.paths.empty()) {
            return Failure{std::string{"no font file is named for the weight "} + chain.name};
        }
        for (const auto& path : chain.paths) {
            const auto id = place_of(path, set);
            if (!id) {
                return Failure{id.fault()};
            }
            chain.ids.push_back(id.value());
        }
    }
    return set;
}

} // namespace thawslip::typeset
