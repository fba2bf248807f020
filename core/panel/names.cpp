#include "core/panel/names.h"

#include <algorithm>
#include <iterator>

namespace stayalight {
namespace {

struct Row {
  Feeds feeds;
  MessageId name, inSentence;
};
// What feeds nothing comes first: a circuit's breaker without its circuit is spare too.
constexpr Row kRows[] = {
    {Feeds::nothing, MessageId{"panel.feeds.nothing"}, MessageId{"panel.by_spare"}},
    {Feeds::feeder, MessageId{"panel.feeds.feeder"}, MessageId{"panel.by_feeder"}},
    {Feeds::inverterInput, MessageId{"panel.feeds.inverter_input"}, MessageId{"panel.by_inverter_input"}},
    {Feeds::inverterOutput, MessageId{"panel.feeds.inverter_output"}, MessageId{"panel.by_inverter_output"}},
    {Feeds::solar, MessageId{"panel.feeds.solar"}, MessageId{"panel.by_solar"}},
    {Feeds::generator, MessageId{"panel.feeds.generator"}, MessageId{"panel.by_generator"}},
    {Feeds::utility, MessageId{"panel.feeds.utility"}, MessageId{"panel.by_utility"}},
    {Feeds::surgeDevice, MessageId{"panel.feeds.surge_device"}, MessageId{"panel.by_surge_device"}},
};

const Row& rowOf(Feeds feeds) {
  const auto* row =
      std::find_if(std::begin(kRows), std::end(kRows), [&](const Row& each) { return each.feeds == feeds; });
  return row != std::end(kRows) ? *row : kRows[0];
}

}  // namespace

Message feedsName(const Breaker& breaker) { return say(rowOf(breaker.feeds.valueOr(Feeds::nothing)).name); }

Message feedsInSentence(Feeds feeds) { return say(rowOf(feeds).inSentence); }

}  // namespace stayalight
