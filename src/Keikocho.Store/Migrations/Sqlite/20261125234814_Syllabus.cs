using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Syllabus : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "EditionRanks");

            migrationBuilder.DropTable(
                name: "ItemCovers");

            migrationBuilder.DropTable(
                name: "RequirementItems");

            migrationBuilder.DropTable(
                name: "Requirements");

            migrationBuilder.DropTable(
                name: "Techniques");

            migrationBuilder.DropTable(
                name: "UnitItems");

            migrationBuilder.DropTable(
                name: "Units");

            migrationBuilder.DropColumn(
                name: "UnitId",
                table: "TermUnits");

            migrationBuilder.DropColumn(
                name: "SecondTechniqueId",
                table: "Items");

            migrationBuilder.DropColumn(
                name: "TechniqueId",
                table: "Items");

            migrationBuilder.DropColumn(
                name: "GoodEvenings",
                table: "ItemStates");

            migrationBuilder.DropColumn(
                name: "LastGoodOn",
                table: "ItemStates");

            migrationBuilder.DropColumn(
                name: "LastWord",
                table: "ItemStates");

            migrationBuilder.DropColumn(
                name: "Unconfirmed",
                table: "ItemStates");

            migrationBuilder.RenameColumn(
                name: "Form",
                table: "Items",
                newName: "Key");

            migrationBuilder.RenameColumn(
                name: "LastOn",
                table: "ItemStates",
                newName: "Evenings");

            migrationBuilder.AddColumn<string>(
                name: "UnitKey",
                table: "TermUnits",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Key",
                table: "Ranks",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Document",
                table: "Editions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<byte[]>(
                name: "PublishedById",
                table: "Editions",
                type: "BLOB",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "AgeRules",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Document = table.Column<string>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    EndedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AgeRules", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "ChosenItems",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Requirement = table.Column<string>(type: "TEXT", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ChosenItems", x => new { x.Club, x.PersonId, x.Requirement, x.ItemId });
                    table.ForeignKey(
                        name: "FK_ChosenItems_Items_Club_ItemId",
                        columns: x => new { x.Club, x.ItemId },
                        principalTable: "Items",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ChosenItems_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "EditionDrafts",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    EditionId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Step = table.Column<int>(type: "INTEGER", nullable: false),
                    Document = table.Column<string>(type: "TEXT", nullable: false),
                    Said = table.Column<string>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EditionDrafts", x => new { x.Club, x.EditionId, x.Step });
                    table.ForeignKey(
                        name: "FK_EditionDrafts_Editions_Club_EditionId",
                        columns: x => new { x.Club, x.EditionId },
                        principalTable: "Editions",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "FallStates",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Falls = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FallStates", x => new { x.Club, x.PersonId });
                });

            migrationBuilder.CreateTable(
                name: "Overrules",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    TestId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Verdict = table.Column<int>(type: "INTEGER", nullable: false),
                    Why = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Overrules", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Overrules_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Overrules_PromotionTests_Club_TestId",
                        columns: x => new { x.Club, x.TestId },
                        principalTable: "PromotionTests",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_KeptAnswers_Club_SubjectId",
                table: "KeptAnswers",
                columns: new[] { "Club", "SubjectId" });

            migrationBuilder.CreateIndex(
                name: "IX_Items_Club_Key",
                table: "Items",
                columns: new[] { "Club", "Key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ChosenItems_Club_ItemId",
                table: "ChosenItems",
                columns: new[] { "Club", "ItemId" });

            migrationBuilder.CreateIndex(
                name: "IX_Overrules_Club_PersonId",
                table: "Overrules",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Overrules_Club_TestId_PersonId",
                table: "Overrules",
                columns: new[] { "Club", "TestId", "PersonId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AgeRules");

            migrationBuilder.DropTable(
                name: "ChosenItems");

            migrationBuilder.DropTable(
                name: "EditionDrafts");

            migrationBuilder.DropTable(
                name: "FallStates");

            migrationBuilder.DropTable(
                name: "Overrules");

            migrationBuilder.DropIndex(
                name: "IX_KeptAnswers_Club_SubjectId",
                table: "KeptAnswers");

            migrationBuilder.DropIndex(
                name: "IX_Items_Club_Key",
                table: "Items");

            migrationBuilder.DropColumn(
                name: "UnitKey",
                table: "TermUnits");

            migrationBuilder.DropColumn(
                name: "Key",
                table: "Ranks");

            migrationBuilder.DropColumn(
                name: "Document",
                table: "Editions");

            migrationBuilder.DropColumn(
                name: "PublishedById",
                table: "Editions");

            migrationBuilder.RenameColumn(
                name: "Key",
                table: "Items",
                newName: "Form");

            migrationBuilder.RenameColumn(
                name: "Evenings",
                table: "ItemStates",
                newName: "LastOn");

            migrationBuilder.AddColumn<byte[]>(
                name: "UnitId",
                table: "TermUnits",
                type: "BLOB",
                nullable: false,
                defaultValue: new byte[0]);

            migrationBuilder.AddColumn<byte[]>(
                name: "SecondTechniqueId",
                table: "Items",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "TechniqueId",
                table: "Items",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "GoodEvenings",
                table: "ItemStates",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<DateOnly>(
                name: "LastGoodOn",
                table: "ItemStates",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LastWord",
                table: "ItemStates",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Unconfirmed",
                table: "ItemStates",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "EditionRanks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    EditionId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    RankId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    AgeByCalendarYear = table.Column<bool>(type: "INTEGER", nullable: false),
                    CountedOverTwoRanks = table.Column<bool>(type: "INTEGER", nullable: false),
                    LessonsCountedADay = table.Column<int>(type: "INTEGER", nullable: true),
                    MinimumAge = table.Column<int>(type: "INTEGER", nullable: true),
                    MinimumLessons = table.Column<int>(type: "INTEGER", nullable: true),
                    MinimumWeeks = table.Column<int>(type: "INTEGER", nullable: true),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    ShortestLessonMinutes = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EditionRanks", x => new { x.Club, x.EditionId, x.RankId });
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
                name: "Requirements",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    AgeFrom = table.Column<int>(type: "INTEGER", nullable: true),
                    AgeTo = table.Column<int>(type: "INTEGER", nullable: true),
                    Carry = table.Column<int>(type: "INTEGER", nullable: false),
                    Condition = table.Column<string>(type: "TEXT", nullable: false),
                    Count = table.Column<int>(type: "INTEGER", nullable: false),
                    Critical = table.Column<bool>(type: "INTEGER", nullable: false),
                    EditionId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    RankId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Shape = table.Column<int>(type: "INTEGER", nullable: false)
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
                name: "Techniques",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Class = table.Column<string>(type: "TEXT", nullable: true),
                    CountedAsId = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Kana = table.Column<string>(type: "TEXT", nullable: true),
                    Kanji = table.Column<string>(type: "TEXT", nullable: true),
                    Name = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Techniques", x => new { x.Club, x.Id });
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

            migrationBuilder.CreateIndex(
                name: "IX_Requirements_Club_EditionId",
                table: "Requirements",
                columns: new[] { "Club", "EditionId" });

            migrationBuilder.CreateIndex(
                name: "IX_Units_Club_EditionId",
                table: "Units",
                columns: new[] { "Club", "EditionId" });
        }
    }
}
