#include "layout/fingerprint.h"

#include <bit>
#include <cstdint>
#include <fmt/format.h>
#include <string_view>

namespace thawslip::layout {
namespace {

/// Two sums of all that is added, in its order; each step is one to one in the number added.
class Mixer {
public:
    void add(std::uint64_t value) {
        low_ = std::rotl(low_ ^ value, 29) * 0x9E3779B97F4A7C15U;
        high_ = std::rotl(high_ + value, 31) * 0xD6E8FEB86659FD93U + low_;
    }
    void add(Length length) { add(std::bit_cast<std::uint64_t>(length.in_points())); }
    void add(double number) { add(std::bit_cast<std::uint64_t>(number)); }
    void add(Point point) {
        add(point.x);
        add(point.y);
    }
    void add(Size size) {
        add(size.width);
        add(size.height);
    }
    void add(Rect rect) {
        add(rect.origin);
        add(rect.size);
    }
    void add(std::string_view text) {
        add(std::uint64_t{text.size()});
        for (const char c : text) {
            add(std::uint64_t{static_cast<unsigned char>(c)});
        }
    }
    std::string digits() const { return fmt::format("{:016x}{:016x}", high_, low_); }

private:
    std::uint64_t low_ = 0;
    std::uint64_t high_ = 0;
};

struct AddTo {
    Mixer& mixer;

    void operator()(const Text& text) const {
        mixer.add(std::uint64_t{text.run.face});
        mixer.add(text.run.text);
        for (const auto& glyph : text.run.glyphs) {
            mixer.add(std::uint64_t{glyph.id});
            mixer.add(glyph.advance);
            mixer.add(glyph.x_offset);
            mixer.add(glyph.y_offset);
        }
        mixer.add(text.size);
        mixer.add(text.baseline);
        mixer.add(static_cast<std::uint64_t>(text.tone));
    }
    void operator()(const Rule& rule) const { mixer.add(rule.area); }
    void operator()(const Outline& outline) const {
        mixer.add(outline.area);
        mixer.add(outline.thickness);
        mixer.add(outline.corner_radius);
    }
    void operator()(const ModuleGrid& grid) const {
        mixer.add(grid.top_left);
        mixer.add(grid.module);
        mixer.add(std::uint64_t{grid.side});
        for (const bool is_dark : grid.dark) {
            mixer.add(std::uint64_t{is_dark ? 1U : 0U});
        }
    }
};

} // namespace

std::string fingerprint(const Frame& frame) {
    Mixer mixer;
    mixer.add(frame.sheet);
    for (const auto& item : frame.items) {
        mixer.add(std::uint64_t{item.index()});
        std::visit(AddTo{mixer}, item);
    }
    return mixer.digits();
}

} // namespace thawslip::layout
