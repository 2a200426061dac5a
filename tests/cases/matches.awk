# Compares the lines of two files (expected, actual; blank lines do not count): a line that ends in "..." matches any
# rest, a line that is only "..." matches any number of lines. Exit 0 when they match.
FNR == NR { if ($0 != "") want[++wants] = $0; next }
$0 != "" { got[++gots] = $0 }
END { exit match_from(1, 1) ? 0 : 1 }

function line_matches(pattern, text,   stem) {
  if (pattern == text) return 1
  if (substr(pattern, length(pattern) - 2) != "...") return 0
  stem = substr(pattern, 1, length(pattern) - 3)
  return substr(text, 1, length(stem)) == stem
}
function match_from(w, g,   k) {
  if (w > wants) return g > gots
  if (want[w] == "...") {
    for (k = g; k <= gots + 1; ++k) if (match_from(w + 1, k)) return 1
    return 0
  }
  if (g > gots || !line_matches(want[w], got[g])) return 0
  return match_from(w + 1, g + 1)
}
