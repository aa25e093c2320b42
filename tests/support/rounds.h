// How many random cases a law is tried on: 10,000, and 500 where the sanitizers make each one dear.
#pragma once
#ifdef GOWNSHEAF_SANITIZED
inline constexpr int kLawRounds = 500;
#else
inline constexpr int kLawRounds = 10000;
#endif
