// code_tables_generator TABLES_FOLDER HEADER_FILE: writes the header, or says what is wrong and exits 1.

#include <cstdio>
#include <fstream>
#include <sstream>

#include "core/code/generator/tables_generator.h"

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: code_tables_generator TABLES_FOLDER HEADER_FILE\n", stderr);
    return 2;
  }
  const std::string folder = argv[1];
  stayalight::generator::TableFiles files;
  for (const std::string& name : stayalight::generator::tableFileNames()) {
    std::ifstream in(folder + "/" + name, std::ios::binary);
    if (!in) continue;
    std::ostringstream text;
    text << in.rdbuf();
    files[name] = text.str();
  }
  try {
    const std::string header = stayalight::generator::generateHeader(files);
    std::ofstream out(argv[2], std::ios::binary);
    out << header;
    out.close();
    if (!out) {
      std::fprintf(stderr, "%s: can't be written\n", argv[2]);
      return 1;
    }
  } catch (const stayalight::generator::MalformedTable& malformed) {
    std::fprintf(stderr, "%s/%s\n", folder.c_str(), malformed.what());
    return 1;
  }
  return 0;
}
