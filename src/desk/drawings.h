#pragma once

#include "layout/frame.h"
#include "typeset/face.h"

#include <list>
#include <map>
#include <optional>
#include <string>

namespace thawslip::desk {

/// The last prints that were laid out, by their fingerprints. Most of them are those of the check
/// before, which the page has already: so each becomes a picture only when it is asked for.
class Drawings {
public:
    /// \returns the name under which it is found
    std::string keep(layout::Frame frame, const typeset::FontSet& fonts, std::string title);

    /// A drawing as SVG; nothing where it is not known, or not any longer.
    std::optional<std::string> svg(const std::string& name);

private:
    struct Drawing {
        std::string name;
        layout::Frame frame;
        typeset::FontSet fonts;
        std::string title;
    };
    std::list<Drawing> drawings_; ///< those that were kept last in front
    std::map<std::string, std::list<Drawing>::iterator, std::less<>> places_;
};

} // namespace thawslip::desk
