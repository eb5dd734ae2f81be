#!/bin/sh
# Makes the font files that are committed with the product. Nothing here is needed to build, test or run:
# it is run by hand, once for each new version of the faces.
#
#   apt-get install fonts-morisawa-bizud-gothic fonts-noto-core fonttools python3-brotli
#   eng/make-fonts.sh
#
# src/Keikocho.Paper/Fonts        whole BIZ UDPGothic, and the part of Noto Sans that papers fall back to
# src/Keikocho.App/wwwroot/fonts  the same faces cut for the screen (woff2) and fonts.css
set -eu
# The same input gives the same files: the time in the head table is that of the original faces.
export LC_ALL=C SOURCE_DATE_EPOCH=1668643200

root=$(cd "$(dirname "$0")/.." && pwd)
biz=${BIZ_DIR:-/usr/share/fonts/truetype/bizud-gothic}
noto=${NOTO_DIR:-/usr/share/fonts/truetype/noto}
paper=$root/src/Keikocho.Paper/Fonts
web=$root/src/Keikocho.App/wwwroot/fonts
mkdir -p "$paper" "$web"

for face in "$biz/BIZUDPGothic-Regular.ttf" "$biz/BIZUDPGothic-Bold.ttf" "$noto/NotoSans-Regular.ttf" "$noto/NotoSans-Bold.ttf"; do
  [ -f "$face" ] || { echo "make-fonts: $face is missing; install the packages named at the top of this script" >&2; exit 1; }
done

# --- Papers ---------------------------------------------------------------------------------------------------
cp "$biz/BIZUDPGothic-Regular.ttf" "$biz/BIZUDPGothic-Bold.ttf" "$paper/"
# Latin Extended-B and Additional, marks, Greek, Cyrillic, punctuation. Basic Latin comes along so that a word is one run.
letters="U+0020-007E,U+00A0-024F,U+0250-036F,U+0370-03FF,U+0400-052F,U+1AB0-1AFF,U+1C80-1C8F,U+1D00-1DFF,U+1E00-1FFF,U+2000-206F,U+20A0-20C0,U+2116,U+2C60-2C7F,U+A640-A69F,U+A720-A7FF,U+FFFD"
for weight in Regular Bold; do
  pyftsubset "$noto/NotoSans-$weight.ttf" --unicodes="$letters" --layout-features='' --no-hinting --notdef-outline \
    --name-IDs='*' --name-languages='*' --name-legacy --output-file="$paper/NotoSans-Papers-$weight.ttf"
done

# --- Screen ---------------------------------------------------------------------------------------------------
latin="U+0020-007E,U+00A0-00FF,U+0131,U+0152-0153,U+02C6,U+02DA,U+02DC,U+2010-2011,U+2013-2014,U+2020-2022,U+2030,U+2032-2033,U+2039-203A,U+20AC,U+2122,U+2190-2193,U+2212,U+00D7"
latinext="U+0100-0130,U+0132-0151,U+0154-017F"
kana="U+203B,U+25A0-25FF,U+2605-2606,U+2713,U+3000-303F,U+3040-309F,U+30A0-30FF,U+FF00-FFEF"
kanji="U+4E00-9FFF,U+F900-FAFF"
# In BIZ UDPGothic these are half as wide as a kanji or as wide: torn apart in "beginners' end". From Noto Sans, as in papers.
quotes="U+2018-201F,U+2026"
wide="U+0180-036F,U+1E00-1EFF"
greek="U+0370-03FF,U+1F00-1FFF"
cyrillic="U+0400-052F,U+2116"
tmp=$(mktemp -d)
trap 'rm -rf "$tmp"' EXIT
# JIS X 0208 level 1 is rows 16 to 47: 2,965 kanji. The forms after it are common in names and lie outside it.
/usr/bin/python3 - "$tmp/common.txt" "$tmp/more.txt" "$biz/BIZUDPGothic-Regular.ttf" <<'P'
import sys
from fontTools.ttLib import TTFont
have = set(TTFont(sys.argv[3]).getBestCmap())
level1 = set()
for row in range(16, 48):
    for cell in range(1, 95):
        try:
            level1.add(ord(bytes([0xA0 + row, 0xA0 + cell]).decode("euc_jp")))
        except UnicodeDecodeError:
            pass
assert len(level1) == 2965, len(level1)
common = (level1 | {ord(c) for c in "髙﨑仝邊邉齋齊濵栁廣澤嶋瀨凜"}) & have
kanji = {c for c in have if 0x4E00 <= c <= 0x9FFF or 0xF900 <= c <= 0xFAFF}
for path, chosen in ((sys.argv[1], common), (sys.argv[2], kanji - common)):
    with open(path, "w") as out:
        out.write("\n".join(f"U+{c:04X}" for c in sorted(chosen)))
P
cut() { # name, face, weight, then what to keep
  pyftsubset "$2" --flavor=woff2 --layout-features='ccmp,locl,mark,mkmk,kern,liga,zero,tnum,vert,vrt2' --no-hinting \
    --output-file="$web/$1-$3.woff2" "$4"
}
for weight in regular bold; do
  case $weight in regular) W=Regular ;; *) W=Bold ;; esac
  cut latin "$biz/BIZUDPGothic-$W.ttf" $weight --unicodes="$latin"
  cut latin-ext "$biz/BIZUDPGothic-$W.ttf" $weight --unicodes="$latinext"
  cut kana "$biz/BIZUDPGothic-$W.ttf" $weight --unicodes="$kana"
  cut kanji-common "$biz/BIZUDPGothic-$W.ttf" $weight --unicodes-file="$tmp/common.txt"
  cut kanji-more "$biz/BIZUDPGothic-$W.ttf" $weight --unicodes-file="$tmp/more.txt"
  cut quotes "$noto/NotoSans-$W.ttf" $weight --unicodes="$quotes"
  cut latin-more "$noto/NotoSans-$W.ttf" $weight --unicodes="$wide"
  cut greek "$noto/NotoSans-$W.ttf" $weight --unicodes="$greek"
  cut cyrillic "$noto/NotoSans-$W.ttf" $weight --unicodes="$cyrillic"
done

# Where two ranges hold the same character the later face is asked first, so kanji-more is fetched only for a
# kanji that kanji-common lacks.
{
  echo '/* Made by eng/make-fonts.sh: do not edit. Licences: OFL-*.txt beside this file. */'
  echo
  for weight in regular bold; do
    case $weight in regular) number=400 ;; *) number=700 ;; esac
    for part in "kanji-more $kanji" "kanji-common $kanji" "kana $kana" "cyrillic $cyrillic" "greek $greek" "latin-more $wide" "latin-ext $latinext" "latin $latin" "quotes $quotes"; do
      name=${part%% *}; range=$(echo "${part#* }" | sed 's/,/, /g')
      printf '@font-face {\n  font-family: "BIZ UDPGothic";\n  font-style: normal;\n  font-weight: %s;\n  font-display: swap;\n  src: url("%s-%s.woff2") format("woff2");\n  unicode-range: %s;\n}\n' "$number" "$name" "$weight" "$range"
    done
  done
} > "$web/fonts.css"
cp "$paper"/OFL-*.txt "$web/"
ls -l "$paper" "$web"
