#include "commands/commands.h"

int main(int argc, char** argv) { return gownsheaf::run_program(argc, argv); }
