using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Beginning : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Attachments",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Hash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Type = table.Column<string>(type: "TEXT", nullable: false),
                    Content = table.Column<byte[]>(type: "BLOB", nullable: false),
                    SubjectId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Attachments", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Attendances",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Word = table.Column<int>(type: "INTEGER", nullable: false),
                    Arrived = table.Column<short>(type: "INTEGER", nullable: true),
                    LeftAt = table.Column<short>(type: "INTEGER", nullable: true),
                    Late = table.Column<bool>(type: "INTEGER", nullable: false),
                    Counts = table.Column<bool>(type: "INTEGER", nullable: false),
                    Ukemi = table.Column<bool>(type: "INTEGER", nullable: false),
                    LeftEarly = table.Column<bool>(type: "INTEGER", nullable: false),
                    Clash = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Attendances", x => new { x.Club, x.LessonId, x.PersonId });
                });

            migrationBuilder.CreateTable(
                name: "Closures",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    HallId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Closures", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "ClubWords",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Word = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ClubWords", x => new { x.Club, x.Key });
                });

            migrationBuilder.CreateTable(
                name: "Clubs",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Zone = table.Column<string>(type: "TEXT", nullable: false),
                    Paper = table.Column<int>(type: "INTEGER", nullable: false),
                    Units = table.Column<int>(type: "INTEGER", nullable: false),
                    IsDemo = table.Column<bool>(type: "INTEGER", nullable: false),
                    PeopleRevision = table.Column<long>(type: "INTEGER", nullable: false),
                    CalendarRevision = table.Column<long>(type: "INTEGER", nullable: false),
                    PastRevision = table.Column<long>(type: "INTEGER", nullable: false),
                    Salt = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Clubs", x => x.Club);
                });

            migrationBuilder.CreateTable(
                name: "Devices",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    ActingAdultId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    FirstSeenAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Devices", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "EditionRanks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    EditionId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    RankId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    MinimumLessons = table.Column<int>(type: "INTEGER", nullable: true),
                    MinimumWeeks = table.Column<int>(type: "INTEGER", nullable: true),
                    MinimumAge = table.Column<int>(type: "INTEGER", nullable: true),
                    CountedOverTwoRanks = table.Column<bool>(type: "INTEGER", nullable: false),
                    LessonsCountedADay = table.Column<int>(type: "INTEGER", nullable: true),
                    ShortestLessonMinutes = table.Column<int>(type: "INTEGER", nullable: true),
                    AgeByCalendarYear = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EditionRanks", x => new { x.Club, x.EditionId, x.RankId });
                });

            migrationBuilder.CreateTable(
                name: "Erased",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Digest = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ErasedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Erased", x => new { x.Club, x.Digest });
                });

            migrationBuilder.CreateTable(
                name: "Families",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    TogetherAsked = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Families", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Halls",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    MatLengthCm = table.Column<int>(type: "INTEGER", nullable: true),
                    MatWidthCm = table.Column<int>(type: "INTEGER", nullable: true),
                    StripCm = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Halls", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "ItemCovers",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    CoversId = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ItemCovers", x => new { x.Club, x.ItemId, x.CoversId });
                });

            migrationBuilder.CreateTable(
                name: "ItemStates",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    GoodEvenings = table.Column<int>(type: "INTEGER", nullable: false),
                    LastGoodOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    LastWord = table.Column<int>(type: "INTEGER", nullable: false),
                    LastOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Unconfirmed = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ItemStates", x => new { x.Club, x.PersonId, x.ItemId });
                });

            migrationBuilder.CreateTable(
                name: "Items",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    TechniqueId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    SecondTechniqueId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Form = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Items", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "KeptAnswers",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    SubjectId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    InputHash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    SumVersion = table.Column<string>(type: "TEXT", nullable: false),
                    Answer = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KeptAnswers", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Ladders",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Ladders", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "PartPasses",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    ResultId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PartPasses", x => new { x.Club, x.ResultId, x.ItemId });
                });

            migrationBuilder.CreateTable(
                name: "People",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Given = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Family = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Called = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Born = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Sex = table.Column<byte[]>(type: "BLOB", nullable: true),
                    AdultSeenById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    AdultSeenOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ErasedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_People", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Programmes",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    LadderId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    FirstCourseLessons = table.Column<int>(type: "INTEGER", nullable: true),
                    FirstCourseWeeks = table.Column<int>(type: "INTEGER", nullable: true),
                    TrialLessons = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Programmes", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Readings",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    Stage = table.Column<int>(type: "INTEGER", nullable: false),
                    FileName = table.Column<byte[]>(type: "BLOB", nullable: false),
                    FileHash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Tables = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Answers = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Summary = table.Column<byte[]>(type: "BLOB", nullable: true),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    SavedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    UndoneAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Readings", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "RegisterPlaces",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    TermId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RegisterPlaces", x => new { x.Club, x.ProgrammeId, x.TermId, x.PersonId });
                });

            migrationBuilder.CreateTable(
                name: "RequirementItems",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    RequirementId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RequirementItems", x => new { x.Club, x.RequirementId, x.ItemId });
                });

            migrationBuilder.CreateTable(
                name: "Settings",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Value = table.Column<string>(type: "TEXT", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Why = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Settings", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Techniques",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Kana = table.Column<string>(type: "TEXT", nullable: true),
                    Kanji = table.Column<string>(type: "TEXT", nullable: true),
                    Class = table.Column<string>(type: "TEXT", nullable: true),
                    CountedAsId = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Techniques", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "TermUnits",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    TermId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    UnitId = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TermUnits", x => new { x.Club, x.TermId, x.ProgrammeId });
                });

            migrationBuilder.CreateTable(
                name: "Terms",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Terms", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Trail",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Number = table.Column<long>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    DeviceId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    SubjectId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Digest = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Hash = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Trail", x => new { x.Club, x.Number });
                });

            migrationBuilder.CreateTable(
                name: "UnitItems",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    UnitId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_UnitItems", x => new { x.Club, x.UnitId, x.ItemId });
                });

            migrationBuilder.CreateTable(
                name: "Evenings",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    HallId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ClosedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    ClosedById = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Evenings", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Evenings_Halls_Club_HallId",
                        columns: x => new { x.Club, x.HallId },
                        principalTable: "Halls",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Editions",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LadderId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    PublishedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Editions", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Editions_Ladders_Club_LadderId",
                        columns: x => new { x.Club, x.LadderId },
                        principalTable: "Ladders",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Ranks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LadderId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Cloth = table.Column<string>(type: "TEXT", nullable: true),
                    Tips = table.Column<int>(type: "INTEGER", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Ranks", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Ranks_Ladders_Club_LadderId",
                        columns: x => new { x.Club, x.LadderId },
                        principalTable: "Ladders",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Adaptations",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Wording = table.Column<byte[]>(type: "BLOB", nullable: true),
                    AgreedOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Adaptations", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Adaptations_Items_Club_ItemId",
                        columns: x => new { x.Club, x.ItemId },
                        principalTable: "Items",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Adaptations_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Consents",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Use = table.Column<int>(type: "INTEGER", nullable: false),
                    Given = table.Column<bool>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Consents", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Consents_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Contacts",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ContactPersonId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    Name = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Relation = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Phone = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Email = table.Column<byte[]>(type: "BLOB", nullable: true),
                    BarredFromCollecting = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Contacts", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Contacts_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Duties",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    VettedUntil = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    FirstAidUntil = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    MayConfirmFalls = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Duties", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Duties_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "FamilyMembers",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    FamilyId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FamilyMembers", x => new { x.Club, x.FamilyId, x.PersonId });
                    table.ForeignKey(
                        name: "FK_FamilyMembers_Families_Club_FamilyId",
                        columns: x => new { x.Club, x.FamilyId },
                        principalTable: "Families",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_FamilyMembers_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "KeepAparts",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    FirstId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    SecondId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KeepAparts", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_KeepAparts_People_Club_FirstId",
                        columns: x => new { x.Club, x.FirstId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_KeepAparts_People_Club_SecondId",
                        columns: x => new { x.Club, x.SecondId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Notes",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Text = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Until = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Notes", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Notes_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Registrations",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Number = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Expires = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Registrations", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Registrations_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Sizes",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Grams = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sizes", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Sizes_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "StandDowns",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Scope = table.Column<int>(type: "INTEGER", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ReviewOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    WhoseWord = table.Column<byte[]>(type: "BLOB", nullable: true),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    LiftedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    LiftedById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    LiftedWhy = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StandDowns", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_StandDowns_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Crossings",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    End = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Crossings", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Crossings_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Crossings_Programmes_Club_ProgrammeId",
                        columns: x => new { x.Club, x.ProgrammeId },
                        principalTable: "Programmes",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Enrolments",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    CountsFrom = table.Column<DateOnly>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Enrolments", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Enrolments_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Enrolments_Programmes_Club_ProgrammeId",
                        columns: x => new { x.Club, x.ProgrammeId },
                        principalTable: "Programmes",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PromotionTests",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ListClosedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    ResultsLockedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PromotionTests", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_PromotionTests_Programmes_Club_ProgrammeId",
                        columns: x => new { x.Club, x.ProgrammeId },
                        principalTable: "Programmes",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "WeeklyHours",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    HallId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Weekday = table.Column<int>(type: "INTEGER", nullable: false),
                    Start = table.Column<short>(type: "INTEGER", nullable: false),
                    End = table.Column<short>(type: "INTEGER", nullable: false),
                    UkemiFrom = table.Column<short>(type: "INTEGER", nullable: false),
                    UkemiTo = table.Column<short>(type: "INTEGER", nullable: false),
                    HalfTime = table.Column<short>(type: "INTEGER", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_WeeklyHours", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_WeeklyHours_Halls_Club_HallId",
                        columns: x => new { x.Club, x.HallId },
                        principalTable: "Halls",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_WeeklyHours_Programmes_Club_ProgrammeId",
                        columns: x => new { x.Club, x.ProgrammeId },
                        principalTable: "Programmes",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ReadingTraces",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ReadingId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Table = table.Column<string>(type: "TEXT", nullable: false),
                    RowId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Before = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReadingTraces", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_ReadingTraces_Readings_Club_ReadingId",
                        columns: x => new { x.Club, x.ReadingId },
                        principalTable: "Readings",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Lessons",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ProgrammeId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    EveningId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Start = table.Column<short>(type: "INTEGER", nullable: false),
                    End = table.Column<short>(type: "INTEGER", nullable: false),
                    UkemiFrom = table.Column<short>(type: "INTEGER", nullable: false),
                    UkemiTo = table.Column<short>(type: "INTEGER", nullable: false),
                    HalfTime = table.Column<short>(type: "INTEGER", nullable: false),
                    ClosureId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    RegisterMissing = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Lessons", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Lessons_Evenings_Club_EveningId",
                        columns: x => new { x.Club, x.EveningId },
                        principalTable: "Evenings",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Lessons_Programmes_Club_ProgrammeId",
                        columns: x => new { x.Club, x.ProgrammeId },
                        principalTable: "Programmes",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Requirements",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    EditionId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    RankId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    Shape = table.Column<int>(type: "INTEGER", nullable: false),
                    Count = table.Column<int>(type: "INTEGER", nullable: false),
                    Condition = table.Column<string>(type: "TEXT", nullable: false),
                    AgeFrom = table.Column<int>(type: "INTEGER", nullable: true),
                    AgeTo = table.Column<int>(type: "INTEGER", nullable: true),
                    Critical = table.Column<bool>(type: "INTEGER", nullable: false),
                    Carry = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Requirements", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Requirements_Editions_Club_EditionId",
                        columns: x => new { x.Club, x.EditionId },
                        principalTable: "Editions",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Units",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    EditionId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Units", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Units_Editions_Club_EditionId",
                        columns: x => new { x.Club, x.EditionId },
                        principalTable: "Editions",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Awards",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LadderId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    RankId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Source = table.Column<int>(type: "INTEGER", nullable: false),
                    TestId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    CertificateNumber = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Replaces = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Awards", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Awards_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Awards_Ranks_Club_RankId",
                        columns: x => new { x.Club, x.RankId },
                        principalTable: "Ranks",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Results",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    TestId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Verdict = table.Column<int>(type: "INTEGER", nullable: false),
                    CarriedUntil = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Replaces = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Results", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Results_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Results_PromotionTests_Club_TestId",
                        columns: x => new { x.Club, x.TestId },
                        principalTable: "PromotionTests",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Marks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    DeviceId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Sequence = table.Column<int>(type: "INTEGER", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ReceivedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<short>(type: "INTEGER", nullable: true),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Code = table.Column<int>(type: "INTEGER", nullable: false),
                    Replaces = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Marks", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Marks_Devices_Club_DeviceId",
                        columns: x => new { x.Club, x.DeviceId },
                        principalTable: "Devices",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Marks_Lessons_Club_LessonId",
                        columns: x => new { x.Club, x.LessonId },
                        principalTable: "Lessons",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Marks_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Adaptations_Club_ItemId",
                table: "Adaptations",
                columns: new[] { "Club", "ItemId" });

            migrationBuilder.CreateIndex(
                name: "IX_Adaptations_Club_PersonId",
                table: "Adaptations",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Attendances_Club_PersonId_ProgrammeId_Date_Counts_Ukemi",
                table: "Attendances",
                columns: new[] { "Club", "PersonId", "ProgrammeId", "Date", "Counts", "Ukemi" });

            migrationBuilder.CreateIndex(
                name: "IX_Awards_Club_PersonId",
                table: "Awards",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Awards_Club_RankId",
                table: "Awards",
                columns: new[] { "Club", "RankId" });

            migrationBuilder.CreateIndex(
                name: "IX_Consents_Club_PersonId",
                table: "Consents",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Contacts_Club_PersonId",
                table: "Contacts",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Crossings_Club_PersonId",
                table: "Crossings",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Crossings_Club_ProgrammeId",
                table: "Crossings",
                columns: new[] { "Club", "ProgrammeId" });

            migrationBuilder.CreateIndex(
                name: "IX_Duties_Club_PersonId",
                table: "Duties",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Editions_Club_LadderId",
                table: "Editions",
                columns: new[] { "Club", "LadderId" });

            migrationBuilder.CreateIndex(
                name: "IX_Enrolments_Club_PersonId",
                table: "Enrolments",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Enrolments_Club_ProgrammeId",
                table: "Enrolments",
                columns: new[] { "Club", "ProgrammeId" });

            migrationBuilder.CreateIndex(
                name: "IX_Evenings_Club_Date_HallId",
                table: "Evenings",
                columns: new[] { "Club", "Date", "HallId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Evenings_Club_HallId",
                table: "Evenings",
                columns: new[] { "Club", "HallId" });

            migrationBuilder.CreateIndex(
                name: "IX_FamilyMembers_Club_PersonId",
                table: "FamilyMembers",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_KeepAparts_Club_FirstId",
                table: "KeepAparts",
                columns: new[] { "Club", "FirstId" });

            migrationBuilder.CreateIndex(
                name: "IX_KeepAparts_Club_SecondId",
                table: "KeepAparts",
                columns: new[] { "Club", "SecondId" });

            migrationBuilder.CreateIndex(
                name: "IX_Lessons_Club_Date",
                table: "Lessons",
                columns: new[] { "Club", "Date" });

            migrationBuilder.CreateIndex(
                name: "IX_Lessons_Club_EveningId",
                table: "Lessons",
                columns: new[] { "Club", "EveningId" });

            migrationBuilder.CreateIndex(
                name: "IX_Lessons_Club_ProgrammeId_Date_Start",
                table: "Lessons",
                columns: new[] { "Club", "ProgrammeId", "Date", "Start" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Marks_Club_DeviceId_Sequence",
                table: "Marks",
                columns: new[] { "Club", "DeviceId", "Sequence" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Marks_Club_LessonId_PersonId",
                table: "Marks",
                columns: new[] { "Club", "LessonId", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Marks_Club_PersonId_ItemId",
                table: "Marks",
                columns: new[] { "Club", "PersonId", "ItemId" },
                filter: "\"ItemId\" IS NOT NULL");

            migrationBuilder.CreateIndex(
                name: "IX_Notes_Club_PersonId",
                table: "Notes",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_PromotionTests_Club_ProgrammeId",
                table: "PromotionTests",
                columns: new[] { "Club", "ProgrammeId" });

            migrationBuilder.CreateIndex(
                name: "IX_Ranks_Club_LadderId",
                table: "Ranks",
                columns: new[] { "Club", "LadderId" });

            migrationBuilder.CreateIndex(
                name: "IX_ReadingTraces_Club_ReadingId",
                table: "ReadingTraces",
                columns: new[] { "Club", "ReadingId" });

            migrationBuilder.CreateIndex(
                name: "IX_Registrations_Club_PersonId",
                table: "Registrations",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Requirements_Club_EditionId",
                table: "Requirements",
                columns: new[] { "Club", "EditionId" });

            migrationBuilder.CreateIndex(
                name: "IX_Results_Club_PersonId",
                table: "Results",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Results_Club_TestId",
                table: "Results",
                columns: new[] { "Club", "TestId" });

            migrationBuilder.CreateIndex(
                name: "IX_Settings_Club_Key_From",
                table: "Settings",
                columns: new[] { "Club", "Key", "From" });

            migrationBuilder.CreateIndex(
                name: "IX_Sizes_Club_PersonId",
                table: "Sizes",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_StandDowns_Club_PersonId",
                table: "StandDowns",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Units_Club_EditionId",
                table: "Units",
                columns: new[] { "Club", "EditionId" });

            migrationBuilder.CreateIndex(
                name: "IX_WeeklyHours_Club_HallId",
                table: "WeeklyHours",
                columns: new[] { "Club", "HallId" });

            migrationBuilder.CreateIndex(
                name: "IX_WeeklyHours_Club_ProgrammeId",
                table: "WeeklyHours",
                columns: new[] { "Club", "ProgrammeId" });

            // Marks and the trail are append-only: whatever the code does, the file refuses. One exception: marks that came from a file
            // (a device of kind 2) go with the child or lesson that only that file had brought, when its reading is taken back.
            migrationBuilder.Sql("""
                CREATE TRIGGER marks_are_not_changed BEFORE UPDATE ON "Marks" BEGIN SELECT RAISE(ABORT, 'Marks are append-only.'); END;
                CREATE TRIGGER marks_are_not_deleted BEFORE DELETE ON "Marks"
                    WHEN NOT EXISTS (SELECT 1 FROM "Devices" d WHERE d."Club" = OLD."Club" AND d."Id" = OLD."DeviceId" AND d."Kind" = 2)
                    BEGIN SELECT RAISE(ABORT, 'Marks are append-only.'); END;
                CREATE TRIGGER trail_is_not_changed BEFORE UPDATE ON "Trail" BEGIN SELECT RAISE(ABORT, 'Trail is append-only.'); END;
                CREATE TRIGGER trail_is_not_deleted BEFORE DELETE ON "Trail" BEGIN SELECT RAISE(ABORT, 'Trail is append-only.'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Adaptations");

            migrationBuilder.DropTable(
                name: "Attachments");

            migrationBuilder.DropTable(
                name: "Attendances");

            migrationBuilder.DropTable(
                name: "Awards");

            migrationBuilder.DropTable(
                name: "Closures");

            migrationBuilder.DropTable(
                name: "ClubWords");

            migrationBuilder.DropTable(
                name: "Clubs");

            migrationBuilder.DropTable(
                name: "Consents");

            migrationBuilder.DropTable(
                name: "Contacts");

            migrationBuilder.DropTable(
                name: "Crossings");

            migrationBuilder.DropTable(
                name: "Duties");

            migrationBuilder.DropTable(
                name: "EditionRanks");

            migrationBuilder.DropTable(
                name: "Enrolments");

            migrationBuilder.DropTable(
                name: "Erased");

            migrationBuilder.DropTable(
                name: "FamilyMembers");

            migrationBuilder.DropTable(
                name: "ItemCovers");

            migrationBuilder.DropTable(
                name: "ItemStates");

            migrationBuilder.DropTable(
                name: "KeepAparts");

            migrationBuilder.DropTable(
                name: "KeptAnswers");

            migrationBuilder.DropTable(
                name: "Marks");

            migrationBuilder.DropTable(
                name: "Notes");

            migrationBuilder.DropTable(
                name: "PartPasses");

            migrationBuilder.DropTable(
                name: "ReadingTraces");

            migrationBuilder.DropTable(
                name: "RegisterPlaces");

            migrationBuilder.DropTable(
                name: "Registrations");

            migrationBuilder.DropTable(
                name: "RequirementItems");

            migrationBuilder.DropTable(
                name: "Requirements");

            migrationBuilder.DropTable(
                name: "Results");

            migrationBuilder.DropTable(
                name: "Settings");

            migrationBuilder.DropTable(
                name: "Sizes");

            migrationBuilder.DropTable(
                name: "StandDowns");

            migrationBuilder.DropTable(
                name: "Techniques");

            migrationBuilder.DropTable(
                name: "TermUnits");

            migrationBuilder.DropTable(
                name: "Terms");

            migrationBuilder.DropTable(
                name: "Trail");

            migrationBuilder.DropTable(
                name: "UnitItems");

            migrationBuilder.DropTable(
                name: "Units");

            migrationBuilder.DropTable(
                name: "WeeklyHours");

            migrationBuilder.DropTable(
                name: "Items");

            migrationBuilder.DropTable(
                name: "Ranks");

            migrationBuilder.DropTable(
                name: "Families");

            migrationBuilder.DropTable(
                name: "Devices");

            migrationBuilder.DropTable(
                name: "Lessons");

            migrationBuilder.DropTable(
                name: "Readings");

            migrationBuilder.DropTable(
                name: "PromotionTests");

            migrationBuilder.DropTable(
                name: "People");

            migrationBuilder.DropTable(
                name: "Editions");

            migrationBuilder.DropTable(
                name: "Evenings");

            migrationBuilder.DropTable(
                name: "Programmes");

            migrationBuilder.DropTable(
                name: "Ladders");

            migrationBuilder.DropTable(
                name: "Halls");
        }
    }
}
