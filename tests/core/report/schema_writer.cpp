// Writes the published schemas anew: schema_writer FOLDER. The target `schemas` calls it with
// resources/schema.

#include <fstream>
#include <iostream>

#include "core/file/file.h"
#include "core/report/report.h"

int main(int count, char** arguments) {
  if (count != 2) {
    std::cerr << "schema_writer FOLDER\n";
    return 2;
  }
  const std::string folder = arguments[1];
  std::ofstream(folder + "/plan.schema.json", std::ios::binary) << stayalight::planSchema();
  std::ofstream(folder + "/assessment.schema.json", std::ios::binary) << stayalight::reportSchema();
  return 0;
}
