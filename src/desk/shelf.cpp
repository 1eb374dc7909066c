#include "desk/shelf.h"

#include "service/print/choices.h"

#include <memory>
#include <utility>

namespace thawslip::desk {
namespace {

/// What a map has for a key, made when it is asked for first.
template <class Map, class Make>
typename Map::mapped_type& made_once(Map& map, const typename Map::key_type& key,
                                     const Make& make) {
    const auto found = map.find(key);
    return found != map.end() ? found->second : map.emplace(key, make(key)).first->second;
}

/// The same texts with the layouts that they are: reading them takes longer than a label.
std::vector<service::ShippedText> with_layouts(std::vector<service::ShippedText> texts) {
    const auto layouts = service::shipped_layouts(texts);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        texts[i].layout = std::make_shared<const layout::Layout>(layouts[i]);
    }
    return texts;
}

} // namespace

service::Surroundings Shelf::with(service::Surroundings around) {
    around.stock = [this, stock = std::move(around.stock)](const std::string& name) {
        constexpr std::size_t most = 256; // names come from a page, and need not be stocks
        if (stock_.size() > most) {
            stock_.clear();
        }
        return made_once(stock_, name, stock);
    };
    around.stocks = [this, stocks = std::move(around.stocks)] {
        if (!stocks_) {
            stocks_ = stocks();
        }
        return *stocks_;
    };
    around.layouts = [this,
                      layouts = std::move(around.layouts)](const std::set<wording::Kind>& kinds) {
        return made_once(layouts_, kinds,
                         [&layouts](const auto& of) { return with_layouts(layouts(of)); });
    };
    around.fonts = [this, fonts = std::move(around.fonts)] {
        if (!fonts_) {
            fonts_ = fonts();
        }
        return *fonts_;
    };
    return around;
}

} // namespace thawslip::desk
