#include "core/code/tables.h"

#include "stayalight/code_tables.h"

namespace stayalight {

const Tables& publishedTables() { return generated::kTables; }

}  // namespace stayalight
