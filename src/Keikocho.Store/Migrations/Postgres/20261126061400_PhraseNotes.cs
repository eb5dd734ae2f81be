using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class PhraseNotes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "PhraseNotes",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    LessonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Phrase = table.Column<string>(type: "text", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    DeviceId = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    ReceivedAt = table.Column<long>(type: "bigint", nullable: false),
                    Until = table.Column<DateOnly>(type: "date", nullable: false),
                    TakenBackAt = table.Column<long>(type: "bigint", nullable: true),
                    TakenBackById = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PhraseNotes", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_PhraseNotes_Lessons_Club_LessonId",
                        columns: x => new { x.Club, x.LessonId },
                        principalTable: "Lessons",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PhraseNotes_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_PhraseNotes_Club_LessonId",
                table: "PhraseNotes",
                columns: new[] { "Club", "LessonId" });

            migrationBuilder.CreateIndex(
                name: "IX_PhraseNotes_Club_PersonId",
                table: "PhraseNotes",
                columns: new[] { "Club", "PersonId" });

            // Row-level security for the table that is new: a connection sees the club that it named, and no other.
            migrationBuilder.Sql("""
                ALTER TABLE "PhraseNotes" ENABLE ROW LEVEL SECURITY;
                ALTER TABLE "PhraseNotes" FORCE ROW LEVEL SECURITY;
                CREATE POLICY own_club ON "PhraseNotes" USING ("Club" = current_setting('keikocho.club', true)::int);
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "PhraseNotes");
        }
    }
}
