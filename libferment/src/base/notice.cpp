#include <ferment/base/notice.hpp>

namespace ferment {

template <>
const Form& form_of<Notice>() {
  using N = Notice;
  static const Form form =
      made_form<N>("Notice", "A caution or a limit of validity that comes with a result.", {},
                   {must_be_given(row<&N::code>("code", "stable, for a program")),
                    must_be_given(row<&N::severity>("severity", "info, caution or warning")),
                    must_be_given(row<&N::values>("values", "the numbers in the text, by field name")),
                    must_be_given(row<&N::text>("text", "English, complete with units"))});
  return form;
}

}  // namespace ferment
