using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Sqlite
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Phrase = table.Column<string>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    DeviceId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ReceivedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Until = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    TakenBackAt = table.Column<long>(type: "INTEGER", nullable: true),
                    TakenBackById = table.Column<byte[]>(type: "BLOB", nullable: true)
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
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "PhraseNotes");
        }
    }
}
