namespace Keikocho.Core.Intake;

/// <summary>Latin letters with marks and what is left of each without them.</summary>
/// <remarks>
/// The program runs without the machine's culture data, where <c>string.Normalize</c> hands text back as it came; so the table
/// is here. Made once from the decompositions of the Unicode Character Database 15 (U+00C0-U+024F, U+1E00-U+1EFF); letters that
/// have no decomposition (ß, ø, ł, æ, œ, đ, ð, þ, ı, ħ, ŧ, ŋ, ə) by common practice.
/// </remarks>
internal static class BareLetters
{
    internal static readonly (string Bare, string Marked)[] Table =
    [
        ("a", "ÀÁÂÃÄÅàáâãäåĀāĂăĄąǍǎǞǟǠǡǺǻȀȁȂȃȦȧḀḁẠạẢảẤấẦầẨẩẪẫẬậẮắẰằẲẳẴẵẶặ"),
        ("ae", "Ææ"),
        ("b", "ḂḃḄḅḆḇ"),
        ("c", "ÇçĆćĈĉĊċČčḈḉ"),
        ("d", "ÐðĎďĐđḊḋḌḍḎḏḐḑḒḓ"),
        ("dz", "ǄǅǆǱǲǳ"),
        ("e", "ÈÉÊËèéêëĒēĔĕĖėĘęĚěƏȄȅȆȇȨȩəḔḕḖḗḘḙḚḛḜḝẸẹẺẻẼẽẾếỀềỂểỄễỆệ"),
        ("f", "ƒḞḟ"),
        ("fi", "ﬁ"),
        ("fl", "ﬂ"),
        ("g", "ĜĝĞğĠġĢģǦǧǴǵḠḡ"),
        ("h", "ĤĥĦħȞȟḢḣḤḥḦḧḨḩḪḫẖ"),
        ("i", "ÌÍÎÏìíîïĨĩĪīĬĭĮįİıǏǐȈȉȊȋḬḭḮḯỈỉỊị"),
        ("ij", "Ĳĳ"),
        ("j", "Ĵĵǰ"),
        ("k", "ĶķĸǨǩḰḱḲḳḴḵ"),
        ("l", "ĹĺĻļĽľŁłḶḷḸḹḺḻḼḽ"),
        ("lj", "Ǉǈǉ"),
        ("m", "ḾḿṀṁṂṃ"),
        ("n", "ÑñŃńŅņŇňŉŊŋǸǹṄṅṆṇṈṉṊṋ"),
        ("nj", "Ǌǋǌ"),
        ("o", "ÒÓÔÕÖØòóôõöøŌōŎŏŐőƠơǑǒǪǫǬǭȌȍȎȏȪȫȬȭȮȯȰȱṌṍṎṏṐṑṒṓỌọỎỏỐốỒồỔổỖỗỘộỚớỜờỞởỠỡỢợ"),
        ("oe", "Œœ"),
        ("p", "ṔṕṖṗ"),
        ("r", "ŔŕŖŗŘřȐȑȒȓṘṙṚṛṜṝṞṟ"),
        ("s", "ŚśŜŝŞşŠšſȘșṠṡṢṣṤṥṦṧṨṩẛ"),
        ("ss", "ßẞ"),
        ("t", "ŢţŤťŦŧȚțṪṫṬṭṮṯṰṱẗ"),
        ("th", "Þþ"),
        ("u", "ÙÚÛÜùúûüŨũŪūŬŭŮůŰűŲųƯưǓǔǕǖǗǘǙǚǛǜȔȕȖȗṲṳṴṵṶṷṸṹṺṻỤụỦủỨứỪừỬửỮữỰự"),
        ("v", "ṼṽṾṿ"),
        ("w", "ŴŵẀẁẂẃẄẅẆẇẈẉẘ"),
        ("x", "ẊẋẌẍ"),
        ("y", "ÝýÿŶŷŸȲȳẎẏẙỲỳỴỵỶỷỸỹ"),
        ("z", "ŹźŻżŽžẐẑẒẓẔẕ"),
    ];
}
