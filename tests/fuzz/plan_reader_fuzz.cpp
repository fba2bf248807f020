// The plan reader on any bytes: it ends in a plan or in one message, and a plan that was read is written and read
// again without change.

#include <cstdlib>
#include <string_view>

#include "core/file/file.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace stayalight;
  const auto read = readPlan({reinterpret_cast<const char*>(data), size}, "fuzz");
  if (!read) {
    const std::string message = render(read.refusal(), plainEnglish());
    if (message.empty() || message.front() == '<' || message.find('\n') != std::string::npos) std::abort();
    return 0;
  }
  const std::string text = writePlan(read.value().plan);
  const auto again = readPlan(text, "fuzz");
  if (!again || !(again.value().plan == read.value().plan) || writePlan(again.value().plan) != text) std::abort();
  return 0;
}
