// Any text given to the reader of plans ends in a plan or a message. A plan that was read is written and read
// again without a difference, and every answer about it can be worked out.

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/assess/assess.h"
#include "core/file/file.h"

namespace {

void require(bool holds, const char* what) {
  if (holds) return;
  std::fputs(what, stderr);
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace stayalight;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Result<ReadPlan> first = readPlan(text, "input");
  if (!first.ok()) {
    require(!render(first.refusal(), plainEnglish()).empty(), "a refusal without words\n");
    return 0;
  }
  const Plan& plan = first.value().plan;
  const std::string written = writePlan(plan);
  const Result<ReadPlan> second = readPlan(written, "written");
  require(second.ok(), "what was written is refused\n");
  require(second.value().plan == plan, "the plan changed on its way through a file\n");
  require(writePlan(second.value().plan) == written, "the text changed on its second way\n");
  (void)assess(plan, Circumstances{true});
  return 0;
}
