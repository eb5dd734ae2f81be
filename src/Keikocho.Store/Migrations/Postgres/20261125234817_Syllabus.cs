using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Postgres
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
                name: "LastOn",
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

            migrationBuilder.AddColumn<string>(
                name: "UnitKey",
                table: "TermUnits",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Key",
                table: "Ranks",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Evenings",
                table: "ItemStates",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Document",
                table: "Editions",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<Guid>(
                name: "PublishedById",
                table: "Editions",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "AgeRules",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Document = table.Column<string>(type: "text", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    EndedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AgeRules", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "ChosenItems",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Requirement = table.Column<string>(type: "text", nullable: false),
                    ItemId = table.Column<Guid>(type: "uuid", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
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
                    Club = table.Column<int>(type: "integer", nullable: false),
                    EditionId = table.Column<Guid>(type: "uuid", nullable: false),
                    Step = table.Column<int>(type: "integer", nullable: false),
                    Document = table.Column<string>(type: "text", nullable: false),
                    Said = table.Column<string>(type: "text", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: true)
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
                    Club = table.Column<int>(type: "integer", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Falls = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FallStates", x => new { x.Club, x.PersonId });
                });

            migrationBuilder.CreateTable(
                name: "Overrules",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    TestId = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Verdict = table.Column<int>(type: "integer", nullable: false),
                    Why = table.Column<byte[]>(type: "bytea", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
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

            // Row-level security for the tables that are new: a connection sees the club that it named, and no other.
            migrationBuilder.Sql("""
                DO $$
                DECLARE t text;
                BEGIN
                    FOREACH t IN ARRAY ARRAY['EditionDrafts', 'ChosenItems', 'AgeRules', 'Overrules', 'FallStates']
                    LOOP
                        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
                        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
                        EXECUTE format('CREATE POLICY own_club ON %I USING ("Club" = current_setting(''keikocho.club'', true)::int)', t);
                    END LOOP;
                END $$;
                """);
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
                name: "Evenings",
                table: "ItemStates");

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

            migrationBuilder.AddColumn<Guid>(
                name: "UnitId",
                table: "TermUnits",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"));

            migrationBuilder.AddColumn<Guid>(
                name: "SecondTechniqueId",
                table: "Items",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "TechniqueId",
                table: "Items",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "GoodEvenings",
                table: "ItemStates",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<DateOnly>(
                name: "LastGoodOn",
                table: "ItemStates",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "LastOn",
                table: "ItemStates",
                type: "date",
                nullable: false,
                defaultValue: new DateOnly(1, 1, 1));

            migrationBuilder.AddColumn<int>(
                name: "LastWord",
                table: "ItemStates",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Unconfirmed",
                table: "ItemStates",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "EditionRanks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    EditionId = table.Column<Guid>(type: "uuid", nullable: false),
                    RankId = table.Column<Guid>(type: "uuid", nullable: false),
                    AgeByCalendarYear = table.Column<bool>(type: "boolean", nullable: false),
                    CountedOverTwoRanks = table.Column<bool>(type: "boolean", nullable: false),
                    LessonsCountedADay = table.Column<int>(type: "integer", nullable: true),
                    MinimumAge = table.Column<int>(type: "integer", nullable: true),
                    MinimumLessons = table.Column<int>(type: "integer", nullable: true),
                    MinimumWeeks = table.Column<int>(type: "integer", nullable: true),
                    Name = table.Column<string>(type: "text", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    ShortestLessonMinutes = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EditionRanks", x => new { x.Club, x.EditionId, x.RankId });
                });

            migrationBuilder.CreateTable(
                name: "ItemCovers",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    ItemId = table.Column<Guid>(type: "uuid", nullable: false),
                    CoversId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ItemCovers", x => new { x.Club, x.ItemId, x.CoversId });
                });

            migrationBuilder.CreateTable(
                name: "RequirementItems",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    RequirementId = table.Column<Guid>(type: "uuid", nullable: false),
                    ItemId = table.Column<Guid>(type: "uuid", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RequirementItems", x => new { x.Club, x.RequirementId, x.ItemId });
                });

            migrationBuilder.CreateTable(
                name: "Requirements",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    AgeFrom = table.Column<int>(type: "integer", nullable: true),
                    AgeTo = table.Column<int>(type: "integer", nullable: true),
                    Carry = table.Column<int>(type: "integer", nullable: false),
                    Condition = table.Column<string>(type: "text", nullable: false),
                    Count = table.Column<int>(type: "integer", nullable: false),
                    Critical = table.Column<bool>(type: "boolean", nullable: false),
                    EditionId = table.Column<Guid>(type: "uuid", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    RankId = table.Column<Guid>(type: "uuid", nullable: true),
                    Shape = table.Column<int>(type: "integer", nullable: false)
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
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Class = table.Column<string>(type: "text", nullable: true),
                    CountedAsId = table.Column<Guid>(type: "uuid", nullable: true),
                    Kana = table.Column<string>(type: "text", nullable: true),
                    Kanji = table.Column<string>(type: "text", nullable: true),
                    Name = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Techniques", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "UnitItems",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    UnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    ItemId = table.Column<Guid>(type: "uuid", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_UnitItems", x => new { x.Club, x.UnitId, x.ItemId });
                });

            migrationBuilder.CreateTable(
                name: "Units",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    EditionId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false)
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
