#include "intake/sides.h"

#include "intake/day_file.h"
#include "intake/values.h"
#include "intake/vessel.h"

namespace thawslip::intake {

std::vector<kitchen::Side> read_sides(toml::Table& package) {
    std::vector<kitchen::Side> sides;
    for (auto& table : package.tables("side", Limits::sides)) {
        const toml::Key add{"add", "\"300 g rice\""};
        const toml::Key takes{"takes", "\"15 min\""};
        table.require(add);
        table.require(takes);
        kitchen::Side side;
        side.where = table.path();
        side.add = read_quantity(table, add).value_or(kitchen::Quantity{});
        side.takes = read_time(table, takes).value_or(kitchen::TimeRange{});
        side.in = table.line({"in", "\"pot\""}, Limits::text_characters).value_or("");
        side.vessel = vessel_of(side.in);
        side.steps = table.lines("steps", Limits::steps, Limits::step_characters);
        side.ready = read_when(table, {"ready", "\"at serving\""}).value_or(side.ready);
        table.refuse_unknown();
        sides.push_back(std::move(side));
    }
    return sides;
}

} // namespace thawslip::intake
