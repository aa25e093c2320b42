// One include that works with Catch2 2.13 (Debian 12) and Catch2 3.
#pragma once
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
#else
#include <catch2/catch.hpp>
#endif
