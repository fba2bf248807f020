// Each kind of thing that a breaker can feed has a name that stands alone and one for a sentence; what feeds
// nothing is spare, and so is a circuit's breaker without its circuit.

#include "core/panel/names.h"

#include <gtest/gtest.h>

namespace stayalight {
namespace {

struct Row {
  Feeds feeds;
  const char* name;
  const char* inSentence;
};

TEST(Names, OfWhatFeedsNoCircuit) {
  for (const Row& row :
       {Row{Feeds::nothing, "Spare", "a spare breaker"}, Row{Feeds::circuit, "Spare", "a spare breaker"},
        Row{Feeds::feeder, "Feeder", "a feeder breaker"},
        Row{Feeds::inverterInput, "Inverter, input", "the breaker of the inverter's input"},
        Row{Feeds::inverterOutput, "Inverter, output", "the breaker of the inverter's output"},
        Row{Feeds::solar, "Solar", "the solar breaker"},
        Row{Feeds::generator, "Generator", "the generator breaker"},
        Row{Feeds::utility, "Utility supply", "the breaker of the utility supply"},
        Row{Feeds::surgeDevice, "Surge protective device", "the breaker of the surge device"}}) {
    Breaker breaker;
    breaker.feeds = row.feeds;
    EXPECT_EQ(render(feedsName(breaker), plainEnglish()), row.name);
    EXPECT_EQ(render(feedsInSentence(row.feeds), plainEnglish()), row.inSentence);
  }
  EXPECT_EQ(render(feedsName(Breaker{}), plainEnglish()), "Spare");
}

}  // namespace
}  // namespace stayalight
