#include "layout/areas/chart_area.h"

#include "base/list.h"
#include "layout/areas/chart_places.h"

#include <utility>

namespace thawslip::layout {
namespace {

using wording::Paragraph;
using wording::TimeChart;

/// Shapes the words of one chart; the first character that cannot be set is kept.
class Preparer {
public:
    Preparer(const TextArea& area, const wording::Print& print, Shaper& shaper)
        : area_{area}, shaper_{shaper} {
        const auto* field = print.field(area.words.front());
        field_ = {area.words.front(), {}, field == nullptr ? print.where : field->where};
    }

    PreparedChart chart(const TimeChart& chart) {
        PreparedChart prepared;
        for (const auto& lane : chart.lanes) {
            prepared.lanes.push_back({words(lane.head), lane.spans, moments(lane)});
        }
        for (const auto& stretch : chart.stretches) {
            prepared.stretches.push_back(
                {stretch.from, stretch.to, ticks(stretch), captions(stretch)});
        }
        for (const auto& key : chart.keys) {
            prepared.keys.push_back({key.fill, words(key.text)});
        }
        return prepared;
    }

    const std::optional<ContentFault>& fault() const { return fault_; }

private:
    /// As the area would set a field of these paragraphs.
    Content words(std::vector<Paragraph> paragraphs) {
        wording::Print print;
        print.fields = {field_};
        print.fields.front().paragraphs = std::move(paragraphs);
        auto content = layout::prepare(area_, print, shaper_);
        if (!content && !fault_) {
            fault_ = content.fault();
        }
        return content ? std::move(content).value() : Content{};
    }

    Content words(const std::string& text) {
        Paragraph paragraph;
        paragraph.spans = {{text, wording::Emphasis::Plain}};
        return words(std::vector{std::move(paragraph)});
    }

    std::vector<PreparedChart::Moment> moments(const TimeChart::Lane& lane) {
        return mapped(lane.moments, [this](const auto& moment) {
            return PreparedChart::Moment{moment.at, words(moment.words)};
        });
    }

    std::vector<PreparedChart::Tick> ticks(const TimeChart::Stretch& stretch) {
        return mapped(stretch.ticks, [this](const auto& tick) {
            return PreparedChart::Tick{tick.at, tick.step, words(tick.label)};
        });
    }

    std::vector<PreparedChart::Caption> captions(const TimeChart::Stretch& stretch) {
        return mapped(stretch.captions, [this](const auto& caption) {
            return PreparedChart::Caption{caption.step, words(caption.text)};
        });
    }

    const TextArea& area_;
    Shaper& shaper_;
    wording::Field field_;
    std::optional<ContentFault> fault_;
};

} // namespace

void read(toml::Table& table, const PrintFields& fields, ChartArea& area) {
    read(table, fields, area.text);
}

Result<Content, ContentFault> prepare(const ChartArea& area, const wording::Print& print,
                                      Shaper& shaper) {
    if (print.chart == nullptr || area.text.words.empty()) {
        return Content{};
    }
    Preparer preparer{area.text, print, shaper};
    auto chart = preparer.chart(*print.chart);
    if (preparer.fault()) {
        return Failure{*preparer.fault()};
    }
    return Content{std::make_shared<const PreparedChart>(std::move(chart))};
}

Length natural_width(const Content& /*content*/, const ChartArea& /*area*/, TypeSize /*type*/) {
    return {};
}

Extent measure(const Content& content, const ChartArea& area, TypeSize type, Length width,
               RowHeights /*rows*/) {
    if (!content.is_there()) {
        return {};
    }
    const ChartNeeds needs{content.chart(), area.text, type, width};
    return {.height = needs.height(),
            .first_baseline = needs.first_baseline(),
            .cut_paragraphs = needs.cut_paragraphs(),
            .takes = Takes::AllThereIs};
}

} // namespace thawslip::layout
