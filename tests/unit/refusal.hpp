// What the library says when it refuses an input.
#pragma once

#include <doctest/doctest.h>

#include <string>

#include <ferment/base/error.hpp>

/// The words of the refusal, or "accepted".
template <class Call>
std::string said(const Call& call) {
  try {
    call();
  } catch (const ferment::InvalidInput& error) {
    return error.what();
  }
  return "accepted";
}

/// The words of the refusal, which must be of this field.
template <class Call>
std::string refusal(const Call& call, const std::string& field) {
  try {
    call();
  } catch (const ferment::InvalidInput& error) {
    CHECK(error.detail().path.ends_with(field));  // after the way to it
    return error.what();
  }
  FAIL("accepted");
  return "";
}

inline bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
